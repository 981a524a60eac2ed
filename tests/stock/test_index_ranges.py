"""The ranges of a need never leave out a spring that the judge would call yes or near."""

import sqlite3
from random import Random

import pytest

from sourcing.files.findings import Place
from sourcing.fit.ranges import ranges_of
from sourcing.materials import find
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.need.model import Need, Pocket, PocketEnd, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, Spring
from sourcing.springs.pressed import force_n, rate_n_per_mm
from sourcing.stock.index import store
from sourcing.stock.index.plain import Plain
from sourcing.stock.index.ranges import ForceRange, Ranges
from sourcing.stock.model import Bench, StockSpring
from sourcing.stock.springs_file import SpringsFile
from sourcing.verdict.options import judge_stock

MUSIC_WIRE = find("music-wire")
assert MUSIC_WIRE is not None


def a_spring(random: Random, kind: str) -> Spring:
    wire = random.choice((0.5, 0.8, 1.0, 1.4))
    mean = wire * random.uniform(4.5, 13.0)
    active = random.uniform(2.0, 12.0)
    solid = wire * (active + 3.5)
    free, ends = solid * random.uniform(1.2, 3.5), random.choice(tuple(Ends))
    assert MUSIC_WIRE is not None
    strength = tensile_strength_mpa(MUSIC_WIRE, wire)
    rest = (active, active + 2.0, ends, MUSIC_WIRE, MUSIC_WIRE.shear_modulus_mpa, MUSIC_WIRE.elastic_modulus_mpa)
    if kind == "compression":
        return CompressionSpring(wire, mean, free, *rest, strength)
    return ConicalSpring(wire, mean, mean * random.uniform(1.1, 2.0), free, *rest, strength)


def a_stock_spring(random: Random, kind: str, number: int) -> StockSpring:
    spring = a_spring(random, kind)
    stated = rate_n_per_mm(spring) * random.uniform(0.8, 1.2) if random.random() < 0.5 else None
    seller = random.choice((None, "a list"))
    return StockSpring(f"R-{number}", spring, stated, on_hand=1, seller=seller, place=Place("x.yaml", number))


def a_wanted(random: Random, value: float) -> Wanted:
    spread = abs(value) * random.uniform(0.0, 0.6)
    return random.choice(
        (
            Wanted(nominal=value),
            Wanted(nominal=value, minus=spread, plus=spread / 2),
            Wanted(low=value - spread, high=value),
            Wanted(low=value * 0.9),
            Wanted(high=value * 1.1),
        )
    )


def a_need(random: Random, kind: str, like: Spring) -> Need:
    """A need that some spring of the catalogue might meet, each part of it there or not."""

    def maybe(wanted: Wanted) -> Wanted | None:
        return wanted if random.random() < 0.5 else None

    free, wire = like.free_length_mm, like.wire_diameter_mm
    lengths = sorted((free * random.uniform(0.55, 1.05) for _ in range(random.randrange(4))), reverse=True)
    rate = rate_n_per_mm(like)
    points = tuple(
        WorkingPoint(Wanted(nominal=mm), maybe(a_wanted(random, max(force_n(like, mm, rate), 0.5)))) for mm in lengths
    )
    widest = like.mean_diameter_large_mm if isinstance(like, ConicalSpring) else like.mean_diameter_mm
    narrowest = like.mean_diameter_small_mm if isinstance(like, ConicalSpring) else like.mean_diameter_mm
    bore, rod = Wanted(nominal=(widest + wire) * 1.2, minus=0.1, plus=0.1), Wanted(nominal=(narrowest - wire) * 0.7)
    ends = {}
    if kind == "conical":
        ends = {"large_end": PocketEnd(maybe(bore), maybe(rod)), "small_end": PocketEnd(maybe(bore), maybe(rod))}
    pocket = Pocket(maybe(bore), maybe(rod), maybe(Wanted(nominal=free)), **ends)
    return Need("a job", kind, pocket=pocket, working=points, free_length_mm=maybe(a_wanted(random, free)),
                wire_diameter_mm=maybe(a_wanted(random, wire)))  # fmt: skip


def filled(springs: tuple[StockSpring, ...]) -> sqlite3.Connection:
    connection = sqlite3.connect(":memory:")
    store.create(connection)
    store.fill(connection, Plain(), [SpringsFile("x.yaml", list(springs))])
    return connection


@pytest.mark.parametrize("kind", ["compression", "conical"])
@pytest.mark.parametrize("seed", range(4))
def test_every_spring_that_is_fit_or_near_lies_in_the_ranges(kind: str, seed: int):
    random, bench, serving = Random(seed), Bench(), 0
    springs = tuple(a_stock_spring(random, kind, number) for number in range(store.FEW + 60))
    connection = filled(springs)
    for _ in range(15):
        need = a_need(random, kind, random.choice(springs).spring)
        ranges = ranges_of(need, bench)
        inside = {number for _, number in store.inside(connection, ranges)}
        serve = {number for number, s in enumerate(springs) if judge_stock(s, need, bench).fits != "no"}
        assert serve <= inside, (need, [springs[number] for number in serve - inside])
        serving += len(serve)
    connection.close()
    assert serving > 20


def test_two_forces_bound_the_rate_and_bounds_are_open_where_they_should_be():
    points = (
        WorkingPoint(Wanted(nominal=24.0), Wanted(nominal=9.0, minus=1.0, plus=1.0)),
        WorkingPoint(Wanted(nominal=14.0), Wanted(nominal=22.0, minus=1.0, plus=1.0)),
    )
    ranges = ranges_of(Need("a job", "compression", working=points), Bench())
    assert ranges.columns["rate"] == pytest.approx((0.9, 1.7), abs=1e-4)
    assert ranges.columns["free"] == pytest.approx((14.0, None), abs=1e-4)
    assert "outside" not in ranges.columns


@pytest.mark.parametrize("in_range", [3, 40])
def test_of_many_springs_those_in_range_and_at_least_the_nearest_are_judged_and_the_rest_counted(in_range: int):
    random = Random(7)
    springs = tuple(a_stock_spring(random, "compression", number) for number in range(store.FEW + 100))
    connection = filled(springs)
    lengths = sorted(spring.spring.free_length_mm for spring in springs)
    low, high = lengths[100], lengths[99 + in_range]
    places, further_off = store.at(connection, Ranges("compression", {"free": (low, high)}))
    connection.close()
    chosen = sorted(springs[number].spring.free_length_mm for _, number in places)
    assert len(chosen) == max(in_range, store.NEAREST)
    assert further_off == len(springs) - len(chosen)
    assert lengths[100 : 100 + in_range] == [length for length in chosen if low <= length <= high]
    by_distance = sorted(lengths, key=lambda length: max(low - length, length - high, 0.0))
    assert chosen == sorted(by_distance[: len(chosen)])


def test_of_a_cone_the_force_is_bounded_above_alone():
    point = WorkingPoint(Wanted(nominal=10.0), Wanted(nominal=5.0, minus=1.0, plus=1.0))
    (force,) = ranges_of(Need("a job", "conical", working=(point,)), Bench()).forces
    assert force == ForceRange(10.0, None, pytest.approx(7.0, abs=1e-4))
