"""The chances of landing inside EN 15800 grade 2 that the winding model of this project says, wound here again.

It simulated, at the first coil: music wire of 1 mm at an index of 12, 0.94; of 2 mm at 16, 0.76; stainless 302 of 2 mm
at 12, 0.71; and 1.0 each once a trial coil was wound. Of music wire it is met where the flow stress rises with the
index as in its form of two parameters; the program's own form of one has 0.95 and 0.79. Of the stainless wire 0.71 is
not met: with the 15 % that the same model doubts its flow stress by it is 0.52, and 0.70 comes of the 10 % that it has
for wire it knows nothing of.
"""

from __future__ import annotations

from dataclasses import replace
from math import exp
from random import Random

import pytest

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.springs.tolerances import coil_diameter_tolerance_mm
from sourcing.stock.model import Trial
from sourcing.winding import springback
from sourcing.winding.measuring import CALIPER_SD_MM, MANDREL_SD_MM
from sourcing.winding.trials import REPEATABILITY, untried

from ..winding.cases import material

RUNS = 4_000
SCATTER = 0.025
"""Three standard deviations of a share of so many coils, at its widest."""

STAINLESS = "stainless-1.4310"


def shares(
    name: str, wire_mm: float, index: float, doubt: float | None = None, power: tuple[float, float] = (0.0, 0.0)
) -> tuple[float, float]:
    """How many of the coils are inside grade 2: untried, and after one trial on the mandrel of the first.

    `power`: of a tenth of the index on the mandrel, by which the flow stress rises; its middle and standard deviation.
    """
    wire, wanted_mm = material(name), index * wire_mm
    strength_mpa, tolerance_mm = tensile_strength_mpa(wire, wire_mm), coil_diameter_tolerance_mm(wanted_mm, index, 2)
    assert strength_mpa is not None
    assert tolerance_mm is not None
    known = untried(wire, wire_mm, strength_mpa)
    known = known if doubt is None else replace(known, flow_ratio_sd=doubt)
    random, mandrel_mm, inside = Random(f"{name} {wire_mm} {index}"), known.mandrel_mm(wanted_mm), [0, 0]

    def coil_mm(ratio: float, rod_mm: float) -> float:
        strain = ratio * known.tensile_strength_mpa / known.elastic_modulus_mpa
        on_rod = (rod_mm + random.gauss(0.0, MANDREL_SD_MM)) / wire_mm + 1
        return springback.released_index(on_rod, strain) * wire_mm * (1 + random.gauss(0.0, REPEATABILITY))

    for _ in range(RUNS):
        ratio = known.flow_ratio * exp(random.gauss(0.0, known.flow_ratio_sd))
        ratio *= ((mandrel_mm / wire_mm + 1) / 10) ** random.gauss(*power)
        first_mm = coil_mm(ratio, mandrel_mm)
        measured_mm = first_mm + wire_mm + random.gauss(0.0, CALIPER_SD_MM)
        taught = known.after(Trial(mandrel_mm, measured_mm), wire)
        second_mm = coil_mm(ratio, taught.mandrel_mm(wanted_mm))
        for number, mean_mm in enumerate((first_mm, second_mm)):
            inside[number] += abs(mean_mm - wanted_mm) <= tolerance_mm
    return inside[0] / RUNS, inside[1] / RUNS


MUSIC_WIRE = pytest.mark.parametrize(("wire_mm", "index", "said"), [(1.0, 12, 0.94), (2.0, 16, 0.76)])


@MUSIC_WIRE
def test_music_wire_lands_within_5_in_100_as_often_as_the_winding_model_says(wire_mm: float, index: float, said: float):
    untried_share, tried_share = shares("music-wire", wire_mm, index)
    assert untried_share == pytest.approx(said, abs=0.05)
    assert tried_share == pytest.approx(1.0, abs=SCATTER)


@MUSIC_WIRE
def test_with_a_flow_stress_that_rises_with_the_index_it_is_just_as_often(wire_mm: float, index: float, said: float):
    assert shares("music-wire", wire_mm, index, power=(0.10, 0.05))[0] == pytest.approx(said, abs=SCATTER)


def test_untried_stainless_wire_lands_less_often_than_the_winding_model_says():
    untried_share, tried_share = shares(STAINLESS, 2.0, 12)
    assert material(STAINLESS).flow_ratio_sd == 0.15
    assert untried_share == pytest.approx(0.51, abs=SCATTER)
    assert untried_share < 0.71 - 4 * SCATTER
    assert tried_share == pytest.approx(1.0, abs=SCATTER)


def test_stainless_wire_known_to_10_per_cent_lands_as_often_as_the_winding_model_says_of_it():
    assert shares(STAINLESS, 2.0, 12, doubt=0.10)[0] == pytest.approx(0.71, abs=SCATTER)
