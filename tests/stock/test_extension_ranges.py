"""The ranges of a need of an extension spring never leave out one that is fit or near, or can be made so."""

from random import Random

import pytest

from sourcing.files.findings import Place
from sourcing.fit.ranges import ranges_of
from sourcing.materials import find
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.need.model import Need, Pocket, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.extension import body_length_mm
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.pulled import force_n, rate_n_per_mm
from sourcing.stock.index import store
from sourcing.stock.model import Bench, StockSpring
from sourcing.verdict.options import adapted_option, judge_stock
from tests.stock.test_index_ranges import a_wanted, filled

MUSIC_WIRE = find("music-wire")
assert MUSIC_WIRE is not None


def a_spring(random: Random) -> ExtensionSpring:
    assert MUSIC_WIRE is not None
    wire = random.choice((0.5, 0.8, 1.0, 1.4))
    mean, coils = wire * random.uniform(4.5, 13.0), random.uniform(4.0, 40.0)
    free = body_length_mm(coils, wire) + 2.0 * random.uniform(0.8, 1.1) * (mean - wire)
    spring = ExtensionSpring(
        *(wire, mean, free, coils, coils, random.choice((Hooks.FULL_LOOP, Hooks.HALF_LOOP)), MUSIC_WIRE),
        *(MUSIC_WIRE.shear_modulus_mpa, MUSIC_WIRE.elastic_modulus_mpa, tensile_strength_mpa(MUSIC_WIRE, wire)),
    )
    stated = random.choice((None, random.uniform(0.3, 1.0) * tension_of(spring).high_n))
    return ExtensionSpring(
        *(wire, mean, free, coils, coils, spring.hooks, MUSIC_WIRE, spring.shear_modulus_mpa),
        *(spring.elastic_modulus_mpa, spring.tensile_strength_mpa, stated, random.choice((0, 0, 0, 1))),
    )


def a_stock_spring(random: Random, number: int) -> StockSpring:
    spring = a_spring(random)
    stated = rate_n_per_mm(spring) * random.uniform(0.9, 1.1) if random.random() < 0.5 else None
    seller = random.choice((None, "a list"))
    on_hand = 1 if seller is None else 0
    return StockSpring(f"R-{number}", spring, stated, on_hand=on_hand, seller=seller, place=Place("x.yaml", number))


def a_need(random: Random, like: ExtensionSpring) -> Need:
    """A need that some spring of the catalogue might meet, as it is or a little shorter, each part there or not."""

    def maybe(wanted: Wanted) -> Wanted | None:
        return wanted if random.random() < 0.5 else None

    free, rate, tension = like.free_length_mm, rate_n_per_mm(like), tension_of(like).likely_n
    lengths = sorted((free * random.uniform(0.95, 1.5) for _ in range(random.randrange(4))), reverse=True)
    points = tuple(
        WorkingPoint(Wanted(nominal=mm), maybe(a_wanted(random, max(force_n(like, mm, rate, tension), 0.5))))
        for mm in lengths
    )
    bore = Wanted(nominal=like.outside_diameter_mm * 1.2, minus=0.1, plus=0.1)
    return Need(
        *("a job", "extension"),
        pocket=Pocket(maybe(bore)),
        working=points,
        free_length_mm=maybe(a_wanted(random, free)),
        wire_diameter_mm=maybe(a_wanted(random, like.wire_diameter_mm)),
        initial_tension_n=maybe(a_wanted(random, tension)),
    )


@pytest.mark.parametrize("seed", range(3))
def test_every_spring_that_is_fit_near_or_can_be_adapted_lies_in_the_ranges(seed: int):
    random, bench, serving, adapted = Random(seed), Bench(), 0, 0
    springs = tuple(a_stock_spring(random, number) for number in range(store.FEW + 20))
    connection = filled(springs)
    for _ in range(6):
        need = a_need(random, random.choice(springs).spring)
        inside = {number for _, number in store.inside(connection, ranges_of(need, bench))}
        for number, stock in enumerate(springs):
            fit = judge_stock(stock, need, bench)
            made = adapted_option(stock, need, bench, fit) if stock.on_hand else None
            if fit.fits != "no" or made is not None:
                assert number in inside, (need, stock, made)
                serving += 1
                adapted += made is not None
    connection.close()
    assert serving > 10
    assert adapted > 0
