"""The ranges of a need of a torsion spring never leave out one that the judge would call yes or near."""

import sqlite3
from random import Random

import pytest

from sourcing.files.findings import Place
from sourcing.fit.ranges import ranges_of
from sourcing.materials import find
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.need.model import Need, Pocket, TurnedPoint, WantedLeg
from sourcing.quantities import Wanted
from sourcing.springs.model import Hand, Leg, LegShape, TorsionSpring
from sourcing.springs.turned import rate_n_mm_per_deg
from sourcing.stock.index import store
from sourcing.stock.index.plain import Plain
from sourcing.stock.model import Bench, StockSpring
from sourcing.stock.springs_file import SpringsFile
from sourcing.verdict.options import judge_stock
from tests.stock.test_index_ranges import a_wanted

MUSIC_WIRE = find("music-wire")
assert MUSIC_WIRE is not None


def a_spring(random: Random) -> TorsionSpring:
    assert MUSIC_WIRE is not None
    wire = random.choice((0.5, 0.8, 1.0, 1.4))

    def leg() -> Leg | None:
        length = random.choice((15.0, 20.0, 25.0))
        return None if random.random() < 0.1 else Leg(length, random.choice(tuple(LegShape)))

    return TorsionSpring(
        wire,
        wire * random.uniform(5.0, 13.0),
        random.uniform(2.0, 9.0),
        MUSIC_WIRE,
        MUSIC_WIRE.elastic_modulus_mpa,
        tensile_strength_mpa(MUSIC_WIRE, wire),
        leg(),
        leg(),
        random.choice((None, 0.0, 90.0, 180.0, 270.0)),
        random.choice((*Hand, None)),
        random.choice((1, 1, 1, 2)),
    )


def a_stock_spring(random: Random, number: int) -> StockSpring:
    spring = a_spring(random)
    stated = rate_n_mm_per_deg(spring) * random.uniform(0.8, 1.2) if random.random() < 0.5 else None
    seller = random.choice((None, "a list"))
    return StockSpring(f"R-{number}", spring, stated, on_hand=1, seller=seller, place=Place("x.yaml", number))


def a_need(random: Random, like: TorsionSpring) -> Need:
    """A need that some spring of the catalogue might meet, each part of it there or not."""

    def maybe(wanted: Wanted) -> Wanted | None:
        return wanted if random.random() < 0.5 else None

    def leg(has: Leg | None) -> WantedLeg | None:
        return None if has is None or random.random() < 0.5 else WantedLeg(Wanted(nominal=has.length_mm * 0.9))

    rate = rate_n_mm_per_deg(like)
    angles = sorted(random.uniform(5.0, 80.0) for _ in range(random.randrange(3)))
    turned = tuple(TurnedPoint(Wanted(nominal=angle), maybe(a_wanted(random, rate * angle))) for angle in angles)
    bore = Wanted(nominal=like.outside_diameter_mm * 1.3, minus=0.1, plus=0.1)
    pocket = Pocket(maybe(bore), maybe(Wanted(nominal=like.inside_diameter_mm * 0.7)))
    hand = like.hand if random.random() < 0.8 else None
    return Need(
        "a job",
        "torsion",
        pocket=pocket,
        turned=turned,
        hand=None if like.bodies > 1 else hand,
        leg_1=leg(like.leg_1),
        leg_2=leg(like.leg_2),
        free_angle_deg=None if like.free_angle_deg is None else maybe(Wanted(nominal=like.free_angle_deg + 3.0)),
        bodies=2 if like.bodies > 1 else None,
        wire_diameter_mm=maybe(a_wanted(random, like.wire_diameter_mm)),
    )


@pytest.mark.parametrize("seed", range(6))
def test_every_spring_that_is_fit_or_near_lies_in_the_ranges(seed: int) -> None:
    random, bench, serving = Random(seed), Bench(), 0
    springs = tuple(a_stock_spring(random, number) for number in range(store.FEW + 60))
    connection = sqlite3.connect(":memory:")
    store.create(connection)
    store.fill(connection, Plain(), [SpringsFile("x.yaml", list(springs))])
    for _ in range(20):
        like = random.choice(springs).spring
        assert isinstance(like, TorsionSpring)
        need = a_need(random, like)
        inside = {number for _, number in store.inside(connection, ranges_of(need, bench))}
        serve = {number for number, s in enumerate(springs) if judge_stock(s, need, bench).fits != "no"}
        assert serve <= inside, (need, [springs[number] for number in serve - inside])
        serving += len(serve)
    connection.close()
    assert serving > 20


def test_torques_bound_the_rate_from_below_only_where_no_longer_leg_may_be_cut() -> None:
    turned = (TurnedPoint(Wanted(nominal=60.0), Wanted(nominal=240.0, minus=30.0, plus=30.0)),)
    bare = ranges_of(Need("a job", "torsion", turned=turned), Bench())
    assert bare.columns["rate"] == pytest.approx((3.0, 5.0), abs=1e-4)
    with_leg = ranges_of(Need("a job", "torsion", turned=turned, leg_1=WantedLeg(Wanted(nominal=20.0))), Bench())
    assert with_leg.columns["rate"][0] is None
