"""The rate of the body of an extension spring against an independent computation: straight beams in three dimensions.

The coils touch at rest, so that the pitch is a wire; from the initial tension on they are free of each other, and the
rate is that of the open helix. Its ends hang on the axis, as hooks over the centre do: they may tilt and turn.
"""

from __future__ import annotations

from random import Random

import pytest

from sourcing.springs.extension import rate_n_per_mm

from .test_beams import SHEAR_MODULUS_MPA, Helix, beams

MODEL_ERROR = 0.005


def some_bodies(count: int, seed: int) -> list[Helix]:
    """Bodies of touching coils over the range for which the error is promised: n >= 3, index 5 to 16."""
    random = Random(seed)

    def one() -> Helix:
        wire = random.uniform(0.3, 3.0)
        return Helix(wire, wire * random.uniform(5.0, 16.0), random.uniform(3.0, 12.0), wire)

    return [one() for _ in range(count)]


def rate_by_beams_n_per_mm(body: Helix) -> float:
    model = beams(body, 24)
    model.def_support("below", True, True, True, False, False, True)
    model.def_support("above", True, True, False, False, False, False)
    model.add_node_load("above", "FZ", 1.0)
    model.analyze_linear(check_stability=False)
    return 1.0 / float(model.nodes["above"].DZ["Combo 1"])


@pytest.mark.parametrize("body", some_bodies(10, seed=7), ids=str)
def test_the_rate_of_a_body_that_hangs_on_its_axis_agrees_with_beams(body: Helix) -> None:
    by_formula = rate_n_per_mm(body.wire_diameter_mm, body.mean_diameter_mm, body.active_coils, SHEAR_MODULUS_MPA)
    assert by_formula == pytest.approx(rate_by_beams_n_per_mm(body), rel=MODEL_ERROR)
