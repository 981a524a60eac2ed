"""Springback, turns and hand-checked springs: what the winding model of this project says beside ours.

Derived for this project, not read anywhere: known answers were worked out by quadrature, by round trips or by hand,
twice and independently. Music wire in the known answers has Rm = 2220 - 820 lg d (a smooth fit of SH, not the table of
the standard), a flow stress of 1.08 Rm and E 206 000 MPa. Workshop cases: test_workshop_cases.py.
"""

from __future__ import annotations

from math import log10

import pytest

from sourcing.quantities import wire_diameter_mm
from sourcing.springs.compression import active_coils_for_rate, rate_n_per_mm, shear_stress_mpa
from sourcing.springs.describe import describe
from sourcing.springs.geometry import pitch_mm, wire_length_mm
from sourcing.springs.model import Ends
from sourcing.winding.by_hand import moment_with_pull_n_mm
from sourcing.winding.pitch_share import PITCH_SHARE
from sourcing.winding.pull import yield_force_n
from sourcing.winding.solid.printed import PRINTED_STRENGTH_MPA, safety_against_twisting_off
from sourcing.winding.springback import (
    FULLY_PLASTIC,
    flow_strain_shown,
    mandrel_index,
    moment_kept,
    moment_ratio,
    plastic_moment_n_mm,
    released_index,
)
from sourcing.winding.trials import Knowledge
from sourcing.winding.turns import energy_let_go_n_mm, pitch_ratio, turns_from, turns_on_mandrel

from .checks import Check, Source, carried, check
from .worked import Coil, greatest_stable_length_mm

E_MPA = 206_000.0
GRAVITY_N_PER_G = 9.80665e-3


def derived(where: str, read: str = "derived for this project and checked numerically") -> Source:
    return Source("Springback of round wire, bent elastic and plastic", where, read)


def case(number: int) -> Source:
    return Source("Hand-checked springs", f"case {number}", "derived for this project twice, independently")


def music_wire(diameter_mm: float) -> Knowledge:
    """Untried music wire as the known answers have it."""
    return Knowledge(diameter_mm, E_MPA, 2220 - 820 * log10(diameter_mm), 1.08, 0.06)


WIRE = music_wire(0.8)
MANDREL_MM = WIRE.mandrel_mm(9.6)

SECTION = derived("the moment of the section")
KNOWN = derived("known answer: d 0.8 mm, D 9.6 mm")
KNOWN_CHECKS = [
    check("moment at first yield over itself", "1", SECTION, lambda: moment_ratio(1.0)),
    check("moment fully plastic over first yield", "1.6977", SECTION, lambda: FULLY_PLASTIC),
    check("moment fully plastic, by the function", "1.6977", SECTION, lambda: moment_ratio(1e6)),
    *(
        check(f"moment kept under a pull of {pull:g} of yield", kept, SECTION, lambda pull=pull: moment_kept(pull))
        for pull, kept in ((0.05, "0.998"), (0.10, "0.991"), (0.20, "0.963"), (0.30, "0.916"))
    ),
    check("tensile strength, MPa", "2299", KNOWN, lambda: WIRE.tensile_strength_mpa),
    check("flow strain", "0.012055", KNOWN, lambda: WIRE.flow_strain),
    check("mandrel, mm", "6.917", KNOWN, lambda: MANDREL_MM),
    check("D_f/D_m", "1.2439", KNOWN, lambda: 9.6 / (MANDREL_MM + 0.8)),
    check("inside diameter/mandrel", "1.2721", KNOWN, lambda: (9.6 - 0.8) / MANDREL_MM),
    check("D from a mandrel of 6.917, mm", "9.6", KNOWN, lambda: released_index(7.717 / 0.8, 0.012055) * 0.8),
    check(
        "mandrel from the flow strain, mm",
        carried("6.917", 0.01, "the flow strain is put in with five figures"),
        KNOWN,
        lambda: (mandrel_index(12.0, 0.012055) - 1) * 0.8,
    ),
]

PITCH_MM = pitch_mm(0.8, 26.0, 6.0, 8.0, Ends.CLOSED_GROUND)
GROOVE_MEAN_MM = 6.96 + 0.8
GROOVE_PITCH_MM = PITCH_MM / pitch_ratio(9.6 / GROOVE_MEAN_MM, PITCH_SHARE)

TURNS = derived("turns and pitch: d 0.8, D 9.6, 6 + 2 coils, L0 26, mandrel 6.96")
TURN_CHECKS = [
    check("groove pitch, mm", "3.80", TURNS, lambda: GROOVE_PITCH_MM),
    check(
        "turns to wind",
        "9.87",
        TURNS,
        lambda: turns_on_mandrel(6.0, 2.0, (9.6, PITCH_MM), (GROOVE_MEAN_MM, GROOVE_PITCH_MM), 0.8),
    ),
    check("wire, mm", "243", TURNS, lambda: wire_length_mm(0.8, 9.6, PITCH_MM, 6.0, 8.0)),
    check("rate, N/mm", "0.786", TURNS, lambda: rate_n_per_mm(0.8, 9.6, 6.0, 81_500.0)),
]


def turns_back(diameter_mm: float) -> float:
    """By how much the crank runs back as 8 coils of index 12 open."""
    wound = mandrel_index(12.0, music_wire(diameter_mm).flow_strain)
    return turns_from(8.0, 12.0, wound) - 8.0


def energy_j(diameter_mm: float) -> float:
    moment = plastic_moment_n_mm(music_wire(diameter_mm).flow_stress_mpa, diameter_mm)
    return energy_let_go_n_mm(moment, turns_back(diameter_mm)) / 1000


CRANK = derived("releasing the crank: 8 coils, index 12")
CRANK_CHECKS = [
    check("turns back, d 0.8", "1.95", CRANK, lambda: turns_back(0.8)),
    check("turns back, d 2", "1.68", CRANK, lambda: turns_back(2.0)),
    check("energy, J, d 0.8", "1.3", CRANK, lambda: energy_j(0.8)),
    check("energy, J, d 2", "15", CRANK, lambda: energy_j(2.0)),
    *(
        check(
            f"crank moment, N m, d {d:g}",
            printed,
            CRANK,
            lambda d=d: plastic_moment_n_mm(music_wire(d).flow_stress_mpa, d) / 1000,
        )
        for d, printed in ((0.5, "0.06"), (0.8, "0.21"), (1.0, "0.40"), (1.5, "1.26"), (2.0, "2.84"), (3.0, "8.9"))
    ),
]


def scaled_mandrel_mm(mandrel_mm: float, wire_mm: float, wanted_mm: float, got_mm: float) -> float:
    """The next mandrel as ours works it out from one trial: the flow strain shown, then the mandrel for it."""
    strain = flow_strain_shown((mandrel_mm + wire_mm) / wire_mm, got_mm / wire_mm)
    return (mandrel_index(wanted_mm / wire_mm, strain) - 1) * wire_mm


def slenderness_limit(seating: float) -> float:
    """L0/D up to which steel never buckles."""
    return greatest_stable_length_mm(1.0, 81_500.0, E_MPA, seating)


RULE = derived(
    "one trial coil scales the mandrel", "derived for this project, exact while the section is fully plastic"
)
STABLE = derived("buckling: always stable below L0/D")
OTHER_CHECKS = [
    check("next mandrel, mm", "8.639", RULE, lambda: scaled_mandrel_mm(8.8, 1.0, 12.0, 12.25)),
    *(
        check(f"L0/D, seating {seating:g}", printed, STABLE, lambda seating=seating: slenderness_limit(seating))
        for seating, printed in ((0.5, "5.2"), (0.7, "3.7"), (1.0, "2.6"), (2.0, "1.3"))
    ),
    check("MWG 20, mm", "1.143", case(9), lambda: wire_diameter_mm("MWG 20")),
]


def slimness_for_twice_the_torque(flow_stress_mpa: float, pull_fraction: float) -> float:
    """How thick, in wires, a printed mandrel is that stands twice the crank's torque; halved in until it is."""
    low, high = 1.0, 30.0
    for _ in range(50):
        middle = (low + high) / 2
        stands = safety_against_twisting_off(
            PRINTED_STRENGTH_MPA, flow_stress_mpa, middle, 1.0, pull_fraction, middle + 1.0
        )
        low, high = (middle, high) if stands < 2.0 else (low, middle)
    return high


MUSIC_1_MPA, STAINLESS_1_MPA = music_wire(1.0).flow_stress_mpa, 0.95 * 1900.0
"""Wire of 1 mm: the flow stress of the known answers, and 0.95 of the least strength of EN 10270-3 1.4310 NS."""


def pull_share_of_moment() -> float:
    """What the pull adds to the moment at the crank, over that moment, the pull's share and the index."""
    yield_n, bending_n_mm = yield_force_n(MUSIC_1_MPA, 1.0), plastic_moment_n_mm(MUSIC_1_MPA, 1.0)
    whole_n_mm = moment_with_pull_n_mm(bending_n_mm, 0.05 * yield_n, 7.0, 1.0)
    return (whole_n_mm / bending_n_mm - 1.0) / (0.05 * 8.0)


PRINTED = derived("the mandrel as a solid: a printed one's thickness over the wire for twice the torque")
PRINTED_CHECKS = [
    *(
        check(
            f"music wire of 1 mm, pull {pull:g} of yield",
            printed,
            PRINTED,
            lambda pull=pull: slimness_for_twice_the_torque(MUSIC_1_MPA, pull),
        )
        for pull, printed in ((0.0, "5.9"), (0.02, "6.5"), (0.05, "7.4"), (0.10, "8.8"))
    ),
    check(
        "stainless wire of 1 mm, no pull",
        "5.4",
        PRINTED,
        lambda: slimness_for_twice_the_torque(STAINLESS_1_MPA, 0.0),
    ),
    check("the pull's share of the moment at the crank, by c C_m", "2.36", PRINTED, pull_share_of_moment),
]


SPRING_1 = Coil(0.9, 8.7, 7.75, 81_500.0)
DESCRIBED_1 = describe(SPRING_1.spring(32.0), at_mm=[24.0, 14.0])


def force_1(at: int) -> float:
    force = DESCRIBED_1.at[at].force_n
    assert force is not None
    return force


TRIAL_STRAIN = flow_strain_shown(6.8 / 0.8, 8.1 / 0.8)


def design_4(wire_mm: float, mean_mm: float) -> Coil:
    return Coil(wire_mm, mean_mm, active_coils_for_rate(wire_mm, mean_mm, 1.30, 81_500.0), 81_500.0)


def stress_4_mpa() -> float:
    return shear_stress_mpa(22.0, 0.8, 8.8)


HAND_CHECKS = [
    check("rate, N/mm", "1.310", case(1), lambda: DESCRIBED_1.rate_n_per_mm),
    check("solid length, mm", "8.775", case(1), lambda: DESCRIBED_1.solid_length_mm),
    check("least gaps Sa, mm", "1.675", case(1), lambda: DESCRIBED_1.minimum_gaps_mm),
    check("force at 24 mm, N", "10.48", case(1), lambda: force_1(0)),
    check("force at 14 mm, N", "23.57", case(1), lambda: force_1(1)),
    check("load at 24 mm, g", "1068", case(1), lambda: force_1(0) / GRAVITY_N_PER_G),
    check("load at 14 mm, g", "2404", case(1), lambda: force_1(1) / GRAVITY_N_PER_G),
    check("stress at 14 mm, MPa", "716", case(1), lambda: shear_stress_mpa(force_1(1), 0.9, 8.7)),
    check("stress at solid, MPa", "924", case(1), lambda: DESCRIBED_1.shear_stress_at_solid_mpa),
    check("growth at solid, mm", "0.14", case(1), lambda: DESCRIBED_1.diameter_growth_mm),
    check("flow stress, MPa", "2302", case(2), lambda: TRIAL_STRAIN * E_MPA),
    check("flow stress over Rm", "1.00", case(2), lambda: TRIAL_STRAIN * E_MPA / WIRE.tensile_strength_mpa),
    check("next mandrel, mm", "7.0", case(2), lambda: (mandrel_index(12.0, TRIAL_STRAIN) - 1) * 0.8),
    check("mandrel assumed before, mm", "6.9", case(2), lambda: MANDREL_MM),
    check(
        "rate kept coils over wanted",
        "0.912",
        case(3),
        lambda: rate_n_per_mm(0.8, 9.9, 6.0, 81_500.0) / rate_n_per_mm(0.8, 9.6, 6.0, 81_500.0),
    ),
    check(
        "active coils that restore the rate",
        "5.47",
        case(3),
        lambda: active_coils_for_rate(0.8, 9.9, rate_n_per_mm(0.8, 9.6, 6.0, 81_500.0), 81_500.0),
    ),
    check("wire 1.0, D 8.6, active coils", "12.3", case(4), lambda: design_4(1.0, 8.6).active_coils),
    check("wire 1.0, D 8.6, solid length, mm", "14.3", case(4), lambda: design_4(1.0, 8.6).solid_length_mm),
    check("wire 1.0, D 9.5, active coils", "9.14", case(4), lambda: design_4(1.0, 9.5).active_coils),
    check("wire 1.0, D 9.5, solid length, mm", "11.1", case(4), lambda: design_4(1.0, 9.5).solid_length_mm),
    check("wire 0.8, D 8.8, active coils", "4.71", case(4), lambda: design_4(0.8, 8.8).active_coils),
    check("wire 0.8, D 8.8, stress at 22 N, MPa", "963", case(4), stress_4_mpa),
]

CHECKS = [*KNOWN_CHECKS, *TURN_CHECKS, *CRANK_CHECKS, *OTHER_CHECKS, *PRINTED_CHECKS, *HAND_CHECKS]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_is_the_known_answer(check: Check) -> None:
    check.must_agree()
