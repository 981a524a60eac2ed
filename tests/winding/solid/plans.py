"""Plans of springs of every kind that is wound, at random but always the same, and the mandrels made for them.

The springs are drawn, not searched for a need: what is tested is the mandrel that a plan leads to.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cache
from random import Random

from sourcing.need.model import Need
from sourcing.springs import geometry
from sourcing.springs.model import (
    CompressionSpring,
    ConicalSpring,
    Ends,
    ExtensionSpring,
    Hand,
    Hooks,
    Spring,
    TorsionSpring,
)
from sourcing.stock.model import Bench
from sourcing.winding.conical.mandrel import laid_cone
from sourcing.winding.doubts import NORMAL_95
from sourcing.winding.learning import learn
from sourcing.winding.making import laid
from sourcing.winding.model import Band, Made, Mandrel, WindingPlan
from sourcing.winding.pitch_share import PITCH_SHARE
from sourcing.winding.plan import OF_KIND
from sourcing.winding.presetting import as_laid
from sourcing.winding.solid.coil import coil_of
from sourcing.winding.solid.in_steps import on_solid
from sourcing.winding.solid.made import sleeve_of
from sourcing.winding.solid.release import release_of
from sourcing.winding.solid.shape import MandrelSolid, solid_of
from sourcing.winding.solid.words import solid_said
from sourcing.winding.springback import plastic_moment_n_mm
from sourcing.winding.trials import Knowledge
from sourcing.winding.turns import turns_from
from tests.winding.cases import BENCH, material, plan

HOW_MANY = 60
WIRES_MM = (0.3, 0.4, 0.5, 0.63, 0.8, 1.0, 1.25, 1.6, 2.0)
STRENGTHS_MPA = {"music-wire": 2200.0, "stainless-1.4310": 1900.0, "phosphor-bronze": 950.0}
"""About what such wire of 1 mm has; enough to draw springs that open by as much as real ones."""

HANDS = (None, Hand.LEFT, Hand.RIGHT)


@cache
def _base() -> WindingPlan:
    return plan()


def _known(random: Random) -> tuple[Knowledge, dict[str, object]]:
    """A wire as it is known untried, and what every spring of it has."""
    name, wire_mm = random.choice(list(STRENGTHS_MPA)), random.choice(WIRES_MM)
    wire = material(name)
    return learn(wire, wire_mm, STRENGTHS_MPA[name], ()), {"wire_diameter_mm": wire_mm, "material": wire}


def _moduli(known: Knowledge) -> dict[str, object]:
    return {"elastic_modulus_mpa": known.elastic_modulus_mpa, "tensile_strength_mpa": known.tensile_strength_mpa}


def _planned(
    known: Knowledge, spring: Spring, mandrel: Mandrel, turns: float, pitch_mm: float, bands: dict[str, Band]
) -> WindingPlan:
    return replace(
        _base(),
        wire_diameter_mm=known.wire_diameter_mm,
        mandrel=mandrel,
        turns_to_wind=turns,
        pitch_on_mandrel_mm=pitch_mm,
        crank_moment_n_mm=plastic_moment_n_mm(known.flow_stress_mpa, known.wire_diameter_mm),
        wanted=spring,
        finished=Made(spring, _base().finished.figures, bands),
    )


def _mandrel(random: Random, known: Knowledge) -> tuple[float, float, dict[str, Band]]:
    """A mandrel for some index, the mean diameter that it gives, and the band of its inside."""
    mandrel_mm = known.mandrel_mm(
        random.choice((random.uniform(4.0, 6.5), random.uniform(6.5, 18.0))) * known.wire_diameter_mm
    )
    mean_mm, around_mm = known.finished_mean_mm(mandrel_mm), NORMAL_95 * known.finished_mean_sd_mm(mandrel_mm)
    inside_mm = mean_mm - known.wire_diameter_mm
    return mandrel_mm, mean_mm, {"inside_diameter_mm": Band(inside_mm - around_mm, inside_mm + around_mm)}


def compression(random: Random) -> WindingPlan:
    known, common = _known(random)
    mandrel_mm, mean_mm, bands = _mandrel(random, known)
    wire_mm, active, ends = known.wire_diameter_mm, random.uniform(2.0, 12.0), random.choice(list(Ends))
    total = active + geometry.dead_coils(ends)
    spring = CompressionSpring(
        **common, **_moduli(known), mean_diameter_mm=mean_mm, shear_modulus_mpa=80000.0, active_coils=active,
        free_length_mm=total * wire_mm + active * wire_mm * random.uniform(0.3, 4.0), total_coils=total, ends=ends,
        hand=random.choice(HANDS),
    )  # fmt: skip
    coil = laid(known, as_laid(spring, spring), mandrel_mm)
    return _planned(known, spring, Mandrel("turned", mandrel_mm), coil.turns, coil.pitch_mm, bands)


def torsion(random: Random) -> WindingPlan:
    known, common = _known(random)
    mandrel_mm, mean_mm, bands = _mandrel(random, known)
    coils, bodies, hand = random.uniform(2.0, 12.0), random.choice((1, 2)), random.choice(HANDS[1:])
    spring = TorsionSpring(
        **common, **_moduli(known), mean_diameter_mm=mean_mm, active_coils=coils, bodies=bodies,
        hand=None if bodies > 1 else hand,
    )  # fmt: skip
    turns = bodies * turns_from(coils, mean_mm, mandrel_mm + known.wire_diameter_mm)
    return _planned(known, spring, Mandrel("turned", mandrel_mm), turns, known.wire_diameter_mm, bands)


def extension(random: Random) -> WindingPlan:
    known, common = _known(random)
    mandrel_mm, mean_mm, bands = _mandrel(random, known)
    coils = random.uniform(5.0, 25.0)
    spring = ExtensionSpring(
        **common, **_moduli(known), mean_diameter_mm=mean_mm, active_coils=coils, total_coils=coils,
        free_length_mm=coils * known.wire_diameter_mm + 2 * mean_mm, hooks=Hooks.FULL_LOOP, shear_modulus_mpa=80000.0,
        hand=random.choice(HANDS),
    )  # fmt: skip
    turns = turns_from(coils + 2.0, mean_mm, mandrel_mm + known.wire_diameter_mm)
    return _planned(known, spring, Mandrel("turned", mandrel_mm), turns, known.wire_diameter_mm, bands)


def conical(random: Random) -> WindingPlan:
    known, common = _known(random)
    wire_mm, active, ends = known.wire_diameter_mm, random.uniform(2.5, 8.0), random.choice(list(Ends))
    small_mm = random.uniform(4.5, 10.0) * wire_mm
    large_mm = small_mm + 2.0 * active * wire_mm * random.choice((random.uniform(0.1, 0.8), random.uniform(1.1, 1.6)))
    total = active + geometry.dead_coils(ends)
    spring = ConicalSpring(
        **common, **_moduli(known), mean_diameter_small_mm=small_mm, mean_diameter_large_mm=large_mm,
        free_length_mm=(total + active * random.uniform(0.6, 3.0)) * wire_mm, active_coils=active, total_coils=total,
        ends=ends, shear_modulus_mpa=80000.0, hand=random.choice(HANDS),
    )  # fmt: skip
    cone = laid_cone(spring, known.mandrel_mm, PITCH_SHARE)
    bands = {
        f"mean_diameter_{end}_mm": Band(mean_mm - around_mm, mean_mm + around_mm)
        for end, mean_mm, on_mm in (("small", small_mm, cone.small_mm), ("large", large_mm, cone.large_mm))
        for around_mm in (NORMAL_95 * known.finished_mean_sd_mm(on_mm),)
    }
    dead = (total - active) * large_mm / (cone.large_mm + wire_mm)
    mandrel = Mandrel("turned", None, cone.points)
    return _planned(known, spring, mandrel, cone.turns + dead, cone.pitch_mm, bands)


MAKERS: Mapping[str, Callable[[Random], WindingPlan]] = {
    "compression": compression,
    "conical": conical,
    "torsion": torsion,
    "extension": extension,
}


@cache
def random_plans() -> tuple[WindingPlan, ...]:
    random = Random(83)
    turns = (*MAKERS.values(), compression, conical)
    return tuple(turns[at % len(turns)](random) for at in range(HOW_MANY))


def kinds_without_a_plan() -> set[str]:
    return set(OF_KIND) - set(MAKERS)


def solid_for(plan: WindingPlan, name: str = "book-press", shank: str = "hex") -> MandrelSolid:
    """The mandrel with a shank; a sleeve where one is asked for and some rod leaves a wall."""
    coil = coil_of(plan)
    if shank == "sleeve" and isinstance(sleeve := sleeve_of(coil, name, BENCH), MandrelSolid):
        return sleeve
    return solid_of(coil, release_of(coil), name, "hex" if shank == "sleeve" else shank, BENCH.units)


def told(plan: WindingPlan, solid: MandrelSolid, need: Need, bench: Bench, printed: bool = True) -> str:
    """All that the sheet says of a mandrel, in its steps and beside them."""
    on = on_solid(plan, solid, need, bench, printed)
    in_steps = (*on.prepared, on.gripped, on.anchored, on.turned, on.off)
    return " ".join((*in_steps, *solid_said(plan, solid, bench, printed)))
