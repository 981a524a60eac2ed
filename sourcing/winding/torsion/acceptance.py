"""What a finished torsion spring must measure, with what to do where it doesn't, and how it goes into its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import pi

from sourcing.fit.model import Fit, Spread
from sourcing.fit.score import allowed, torque_house_tolerance_n_mm
from sourcing.need.model import Need, WantedLeg
from sourcing.quantities import show_angle, show_length, show_torque, show_weight
from sourcing.springs import turned
from sourcing.springs.hands import HOW_TO_SEE
from sourcing.springs.life import Making
from sourcing.springs.model import Leg, TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.heat import asked_with
from sourcing.winding.in_hand import judged, keeps, kept_outside_mm
from sourcing.winding.model import Acceptance, GoesIn
from sourcing.winding.torsion.in_hand import as_it_came
from sourcing.winding.torsion.task import BENT_AT_MOST_DEG
from sourcing.winding.weighing import KITCHEN_SCALE_N, grams

ARM_MM = 40.0
"""The lever arm on which the scale pushes where the legs' lengths are not known."""


_BLIND = (
    "If the bore is blind, wind it up a little and tie its legs with thread, push it in square to the bottom, and cut "
    "the thread when both legs sit (common practice, no source)."
)


@dataclass(frozen=True, slots=True)
class TorqueReading:
    """The torque to accept at an angle."""

    angle_deg: float
    low_n_mm: float | None
    high_n_mm: float | None


def torque_readings(spring: TorsionSpring, need: Need, bench: Bench) -> tuple[TorqueReading, ...]:
    """The torques to accept, smallest angle first.

    Where only one is wanted, a second is taken at half its angle, so that the rate shows; it is allowed the same share
    of itself as the first.
    """
    wanted = [
        TorqueReading(
            point.at_deg, *allowed(point.torque_n_mm, torque_house_tolerance_n_mm(point.torque_n_mm, bench.tolerances))
        )
        for point in need.turned
        if point.torque_n_mm is not None
    ]
    if len(wanted) == 1:
        one = wanted[0]
        half = (None if bound is None else bound / 2.0 for bound in (one.low_n_mm, one.high_n_mm))
        wanted.append(TorqueReading(one.angle_deg / 2.0, *half))
    return tuple(sorted(wanted, key=lambda each: each.angle_deg))


def sits(need: Need) -> str:
    """On what a finished spring sits while it is wound up: on its rod, or in its bore where it has none."""
    if need.pocket.rod_mm is not None:
        return "on its rod"
    return "in its bore" if need.pocket.bore_mm is not None else "on a rod that fits it loosely"


def arm_mm(spring: TorsionSpring) -> float:
    """Where the scale pushes against leg 2: where it is loaded."""
    return ARM_MM if spring.leg_2 is None else spring.leg_2.length_mm


def accept_torsion(
    spring: TorsionSpring, planned: Fit, opening: float, need: Need, bench: Bench
) -> tuple[Acceptance, ...]:
    """The checks of a finished torsion spring in the order in which they are done; `opening`: D_f/D_m of its coil."""
    return (
        *_hand(spring),
        _outside_diameter(spring, planned, need, bench),
        *_body_length(spring, need, bench),
        *_leg_rows(spring, need, bench),
        *_free_angle(spring, opening, need, bench),
        *(row for each in torque_readings(spring, need, bench) for row in _torque_rows(spring, each, need, bench)),
    )


def _hand(spring: TorsionSpring) -> Iterator[Acceptance]:
    if spring.hand is not None:
        yield Acceptance(
            f"hand_{spring.hand}", None, None, f"{HOW_TO_SEE} The other hand cannot be mended: wind another."
        )


def _outside_diameter(spring: TorsionSpring, planned: Fit, need: Need, bench: Bench) -> Acceptance:
    """What serves with its legs at their angle, which has a row of its own."""

    def kept(mean_mm: float) -> bool:
        bent = replace(as_it_came(spring, mean_mm), free_angle_deg=spring.free_angle_deg)
        return keeps(judged(bent, need, bench, Spread(making=Making.WOUND)), planned)

    return Acceptance(
        "outside_diameter_mm",
        *kept_outside_mm(spring, kept, bench.units),
        "Too large: a smaller mandrel, too small: a larger one. Write the coil down with `springwright trial`: the "
        "next mandrel will be nearer. The rate hangs on the wire in the body, not on the diameter: a coil that clears "
        "rod and bore is kept, its legs bent to their angle.",
    )


def _body_length(spring: TorsionSpring, need: Need, bench: Bench) -> Iterator[Acceptance]:
    width = need.pocket.width_mm
    if width is None or width.smallest is None:
        return
    most_deg = max((point.at_deg for point in need.turned), default=0.0)
    grows_mm = spring.bodies * most_deg / 360.0 * spring.wire_diameter_mm
    yield Acceptance(
        "body_length_mm",
        None,
        width.smallest - grows_mm,
        f"Wound up it grows by {show_length(grows_mm, bench.units)}: press the coils together, or lay the next closer.",
    )


def _leg_rows(spring: TorsionSpring, need: Need, bench: Bench) -> Iterator[Acceptance]:
    for name, wish, leg in (("leg_1_mm", need.leg_1, spring.leg_1), ("leg_2_mm", need.leg_2, spring.leg_2)):
        if wish is not None and leg is not None:
            yield _leg_row(name, wish, leg, bench)


def _leg_row(name: str, wish: WantedLeg, leg: Leg, bench: Bench) -> Acceptance:
    low, high = allowed(wish.length_mm, bench.tolerances.length_mm)
    shape = "" if wish.shape is None else f" It is to be {leg.shape}."
    return Acceptance(name, low, high, f"Too long: cut it. Too short: it does not reach, wind another.{shape}")


def _free_angle(spring: TorsionSpring, opening: float, need: Need, bench: Bench) -> Iterator[Acceptance]:
    wish = need.free_angle_deg
    if wish is None:
        return
    low, high = allowed(wish, bench.tolerances.angle_deg)
    one_percent = 3.6 * spring.active_coils
    yield Acceptance(
        "free_angle_deg",
        low,
        high,
        f"Bend the legs where they leave the coil, up to {show_angle(BENT_AT_MOST_DEG)} in all; further off, stop the "
        f"crank later or earlier the next time, by what it is off times D_f/D_m = {opening:.2f}, for what is added "
        f"opens too: {asked_with('`--came-out-angle`', spring.material, bench)} says where. Each per cent of the "
        f"diameter moves it by {show_angle(one_percent)}.",
    )


def _torque_rows(spring: TorsionSpring, reading: TorqueReading, need: Need, bench: Bench) -> Iterable[Acceptance]:
    """Grams at a lever arm where a kitchen scale reaches, and the torque."""
    arm, at = arm_mm(spring), f"at_{reading.angle_deg:g}_deg"
    coil = show_length(pi * spring.mean_diameter_mm, bench.units)
    if_not = (
        f"{sits(need).capitalize()}, turned from free by the angle, the scale pushed square against leg 2, "
        f"{show_length(arm, bench.units)} from where it leaves the coil. Too weak at both angles in proportion: it has "
        f"too much wire in its body ({coil} are one coil); too strong: too little. Off by the same at both: it was not "
        "turned from free."
    )
    low, high = (None if bound is None else bound / arm for bound in (reading.low_n_mm, reading.high_n_mm))
    if high is None or high <= KITCHEN_SCALE_N:
        yield Acceptance(f"scale_{at}_{arm:g}_mm_arm_g", grams(low), grams(high), if_not)
    yield Acceptance(f"torque_{at}_n_mm", reading.low_n_mm, reading.high_n_mm, if_not)


def _slipped(need: Need) -> str:
    """How it is put where it sits."""
    if need.pocket.rod_mm is not None:
        return "Slip it over its rod"
    return "Slide it into its bore" if need.pocket.bore_mm is not None else "Put it in its place"


def torsion_goes_in(spring: TorsionSpring, need: Need, bench: Bench) -> GoesIn:
    """How the spring is wound up as it is fitted, and what pushes back."""
    least_deg = min((point.at_deg for point in need.turned), default=0.0)
    torque = turned.rate_n_mm_per_deg(spring) * least_deg
    at_arm = torque / arm_mm(spring)
    said = (
        f"{_slipped(need)} while it is slack, so that the load closes its coils.",
        f"Turned by {show_angle(least_deg)} from free, its smallest working angle, it pushes back with "
        f"{show_torque(torque, bench.units)}, that is {show_weight(at_arm, bench.units)} at "
        f"{show_length(arm_mm(spring), bench.units)}"
        " of leg: hold the leg with pliers until it is hooked in, and keep eyes and fingers out of its way.",
    )
    bore = () if need.pocket.bore_mm is None else (_BLIND,)
    return GoesIn(None, None, (*said, *bore))
