"""The cautions that stand where the work is done: holding, cutting, bending, grinding, presetting.

The words are common practice (no source) but where the sheet names one; what is held here is that none goes missing.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import pytest

from sourcing.need.model import Need, WantedEnd, WantedLeg
from sourcing.springs.model import Ends, EndShape, Hooks, LegShape
from sourcing.stock.model import Bench
from sourcing.winding.finishing import never
from sourcing.winding.plan import plan_winding

from .cases import BENCH, material, need, planned, pocket, point, spool, wanted
from .test_before_and_after import NEEDS, every_kind
from .test_extension import a_need
from .test_heat_and_finishing import NO_OVEN, ROD
from .test_torsion import need as a_lid


def steps_of(wish: Need, wire_mm: float, bench: Bench = BENCH) -> Sequence[str]:
    return planned(plan_winding(wish, spool(wire_mm, length_left_mm=20_000.0), bench)).steps


def the_step(steps: Sequence[str], begins: str) -> str:
    (found,) = (each for each in steps if each.startswith(begins))
    return found


HOOKED = need(
    pocket=pocket(None, None),
    ends=Ends.CLOSED,
    end_1=WantedEnd(EndShape.TANG_IN, wanted(4.0), 90.0),
    end_2=WantedEnd(EndShape.TANG_OUT, wanted(5.0), 90.0),
)
LEGS = {
    shape: replace(a_lid(), leg_1=WantedLeg(wanted(18.0), shape), leg_2=WantedLeg(wanted(18.0), shape))
    for shape in LegShape
}
ALL = {
    **{kind: NEEDS[kind] for kind in NEEDS},
    "end pieces": (HOOKED, 0.8),
    **{f"{hooks} hooks": (a_need(hooks=hooks), 0.8) for hooks in Hooks},
    **{f"{shape} legs": (wish, 1.2) for shape, wish in LEGS.items()},
    "legs as the old ones": (replace(a_lid(), leg_1=None, leg_2=None), 1.2),
}

CUTS = re.compile(r"(?:^|; |, )(?:and )?(?:cut|trim)\b", re.IGNORECASE)


# The old spring


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        ("compression", ("a cord through it or a clamp across it", "a bag or cloth over it", "until it is slack")),
        ("conical", ("a cord through it or a clamp across it", "a bag or cloth over it", "until it is slack")),
        (
            "extension",
            ("a cord tied through both its hooks", "a bag or cloth over it", "second loop of cord to unhook"),
        ),
        ("torsion", ("its coil on the rod", "clamp or pliers on the leg that is loaded", "a bag or cloth over it")),
    ],
)
def test_the_old_spring_is_held_captive_by_what_suits_its_kind(kind: str, words: Sequence[str]) -> None:
    told = the_step(steps_of(*NEEDS[kind]), "Let it down slowly and captive, eye protection on: ")
    for each in words:
        assert each in told


def test_a_torsion_spring_without_a_rod_is_not_held_on_one() -> None:
    told = the_step(steps_of(a_lid(pocket=pocket(None, None)), 1.2), "Let it down slowly and captive")
    assert "on the rod" not in told
    assert "clamp or pliers on the leg" in told


def test_who_lets_down_a_strong_spring_keeps_out_of_its_line() -> None:
    strong = need(pocket=pocket(None, None), working=(point(60, 40), point(30, 120)))
    assert "thrown hard (common practice, no source): keep out of its line." in steps_of(strong, 2.0)[1]


# Cutting


@pytest.mark.parametrize("case", ALL)
def test_wherever_wire_is_cut_it_is_said_what_is_held(case: str) -> None:
    """In the sentence of each cut; stop blocks and the seat of a cone's mandrel are no wire."""
    sentences = [each for step in steps_of(*ALL[case]) for each in re.split(r"(?<=[a-z)])[.:] ", step)]
    cuts = [each for each in sentences if CUTS.search(each) and not re.search("stop blocks|seat into", each)]
    assert len(cuts) >= 2
    for each in cuts:
        assert "held" in each, each


@every_kind
def test_the_wire_is_cut_with_both_ends_held_and_its_free_end_hooked(kind: str) -> None:
    (told,) = (each for each in steps_of(*NEEDS[kind]) if re.match(r"Cut [\d.]+ mm from", each))
    assert ", both ends held, and bend a small hook at the free end so that it cannot scratch" in told


@every_kind
def test_the_crank_is_never_let_go_while_the_coil_pushes(kind: str) -> None:
    (eased,) = (step for step in steps_of(*NEEDS[kind]) if "and ease it back" in step)
    assert re.search(r"Never let go of the (crank|chuck|handle of the drill) or of the wire", eased)
    assert "only when nothing pushes any more, cut both tails, each with both sides held" in eased


# Bending


def test_an_end_piece_is_bent_slowly_once_round_a_pin_and_past_its_angle() -> None:
    """The pin of 1.6 mm for wire of 0.8 mm: bent round no less than the wire."""
    steps = steps_of(HOOKED, 0.8)
    for name in ("end 1", "end 2"):
        told = the_step(steps, f"Make {name} ")
        assert "between smooth jaws" in told
        assert "round a pin of 1.60 mm or more, slowly and once: a tighter or a second bend cracks it" in told
        assert "It springs back, so bend past the angle" in told
        assert told.endswith("and cut it there, both sides held.")
    assert "towards the axis" in the_step(steps, "Make end 1")
    assert "away from the axis" in the_step(steps, "Make end 2")


@pytest.mark.parametrize("hooks", [each for each in Hooks if each is not Hooks.THREADED_PLUG])
def test_a_hook_is_bent_without_nicks_no_tighter_than_its_pin_and_its_breaking_place_is_named(hooks: Hooks) -> None:
    told = the_step(steps_of(a_need(hooks=hooks), 0.8), "Where a hook leaves the body")
    assert "no tighter, and a little past: it springs back" in told
    assert "where an extension spring breaks" in told
    assert "smooth, round jaws or a rounded pin, never with cutters or sharp-edged pliers: a nick is where" in told


@pytest.mark.parametrize("shape", [LegShape.HOOKED, LegShape.OFFSET])
def test_a_leg_is_bent_no_tighter_than_its_own_wire(shape: LegShape) -> None:
    """An inside radius of one wire: a pin of 2.4 mm for wire of 1.2 mm (DIN 2194)."""
    told = the_step(steps_of(LEGS[shape], 1.2), "Mark leg 1" if shape is LegShape.HOOKED else "Bend leg 1")
    assert "round a pin of 2.40 mm, not tighter than its own wire, or it breaks there (DIN 2194)" in told
    assert "It springs back: bend it a little past." in told


# Grinding


def test_ends_are_ground_in_a_jig_with_eye_protection_and_kept_cool() -> None:
    told = the_step(steps_of(need(ends=Ends.CLOSED_GROUND), 0.8), "Grind both ends square")
    assert "over three quarters of a turn, until the tip is a quarter of the wire" in told
    assert "Hold the spring in a jig or pliers, never in the fingers, eye protection on" in told
    assert "dip it in water before it is too hot to touch: blue wire has been too hot" in told


def test_copper_wire_is_told_where_it_softens() -> None:
    """450 degF, 232 degC (Machinery's Handbook, 31st ed., p. 346)."""
    for units, most in (("mm", "232 °C"), ("inch", "450 °F")):
        told = never(material("phosphor-bronze"), ROD, True, replace(BENCH, units=units))
        assert any(each.startswith(f"No heat above {most}") for each in told)


# Presetting


@pytest.mark.parametrize("kind", ["compression", "conical"])
@pytest.mark.parametrize(("bench", "times"), [(BENCH, "three times"), (NO_OVEN, "three to five times")])
def test_a_spring_is_pressed_solid_captive_so_many_times_and_ends_at_its_length(
    kind: str, bench: Bench, times: str
) -> None:
    wish, wire_mm = NEEDS[kind]
    made = planned(plan_winding(wish, spool(wire_mm, length_left_mm=20_000.0), bench))
    told = the_step(made.steps, f"Press it solid {times}")
    assert "over a rod or in a tube, eye protection on." in told
    longer = any(each.startswith(("Wind it longer", "The first pressing")) for each in made.steps)
    assert (f"It should end {made.wanted.free_length_mm:.1f} mm long." in told) == longer


def test_the_springs_pressed_here_are_of_both_sorts() -> None:
    said = [the_step(steps_of(*NEEDS[kind]), "Press it solid") for kind in ("compression", "conical")]
    assert ["It should end" in each for each in said] == [True, False]


@pytest.mark.parametrize(("bench", "how"), [(BENCH, "three times, slowly"), (NO_OVEN, "once, slowly")])
def test_an_extension_spring_is_pulled_slowly_from_out_of_its_line(bench: Bench, how: str) -> None:
    told = the_step(steps_of(a_need(), 0.8, bench), "Pull it ")
    assert how in told
    assert "Eye protection on, and stay out of its line: a hook that slips or breaks lets it fly." in told


@pytest.mark.parametrize(("bench", "how"), [(BENCH, "to its largest"), (NO_OVEN, "a little past its largest")])
def test_a_torsion_spring_is_wound_up_three_times_the_way_it_is_loaded(bench: Bench, how: str) -> None:
    told = the_step(steps_of(a_lid(), 1.2, bench), "Wind it up ")
    assert f"{how} angle three times" in told
    assert told.endswith("the way it is loaded.")
