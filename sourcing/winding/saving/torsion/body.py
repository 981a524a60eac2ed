"""A torsion spring that came out otherwise: what it became, where its legs stand, and how it is judged."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from sourcing.figures import formula
from sourcing.fit.model import Fit, Spread
from sourcing.springs.life import Making
from sourcing.springs.model import TorsionSpring
from sourcing.stock.model import Trial
from sourcing.winding import in_hand
from sourcing.winding.doubts import COILS_DOUBT, RATE_DOUBT, opening_sd
from sourcing.winding.heat import change_of_diameter
from sourcing.winding.leg_reading import WHOLE_TURN_DEG, relative_sd
from sourcing.winding.saving.coil import Coil, SenselessError
from sourcing.winding.torsion.task import LEGS_SET_DEG
from sourcing.winding.turns import opens_deg


@dataclass(frozen=True, slots=True)
class Came:
    """The spring as it came out, in its final state with its legs as they stand, and by how much they are off.

    `off_deg` counts whole turns too; `trial` is None where the diameter was not measured; `surprising`: it is too far
    off to be chance.
    """

    spring: TorsionSpring
    off_deg: float
    trial: Trial | None
    surprising: bool
    agree: bool = True

    @property
    def legs_measured(self) -> bool:
        """Whether where its legs stand was measured, and not worked out from the diameter."""
        return self.trial is None or self.trial.leg_angle_deg is not None


def wanted_of(coil: Coil) -> TorsionSpring:
    """The spring that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, TorsionSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: TorsionSpring) -> Fit:
    """The spring against the need, measured."""
    spread = Spread(
        diameter_sd_mm=coil.diameter_sd_mm(spring.mean_diameter_mm),
        rate_sd=(RATE_DOUBT**2 + (COILS_DOUBT / spring.active_coils) ** 2) ** 0.5,
        free_angle_sd_deg=LEGS_SET_DEG,
        making=Making.WOUND,
    )
    return in_hand.judged(spring, coil.need, coil.bench, spread)


@formula(
    "u = 360 n √(u_o² + u_l² + u_h²)",
    where={"n": "coils", "u_o": "opening_sd", "u_l": "reading_sd", "u_h": "heat_sd"},
    source="derived, see winding_model: a share by which the coils open more is that share of all their turns",
)
def legs_sd_deg(coils: float, opening_sd: float, reading_sd: float, heat_sd: float) -> float:
    """How far legs may be read from where they were expected, one standard deviation in degrees.

    The relative doubts are of how far the coil opens, of what is read and counted, and of what heat did to it.

    >>> round(legs_sd_deg(5.0, 0.02, 0.005, 0.0), 1)
    37.1
    """
    return WHOLE_TURN_DEG * coils * hypot(opening_sd, reading_sd, heat_sd)


def expected_sd_deg(coil: Coil) -> float:
    """The same of the coil, by what is known of its wire."""
    assert isinstance(coil.meant, TorsionSpring)
    coils, heat_sd = coil.meant.active_coils, change_of_diameter(coil.wire.material, coil.bench)[1]
    doubts = (opening_sd(coil.known_then(), mandrel_mm(coil)), relative_sd(turns_laid(coil), coils))
    return legs_sd_deg(coils, *doubts, heat_sd if coil.heated else 0.0)


def stop_deg(coil: Coil) -> float | None:
    """Where the plan stops the crank, from leg 1 on to leg 2; None where no angle is wanted."""
    meant = coil.plan.finished.spring
    assert isinstance(meant, TorsionSpring)
    if meant.free_angle_deg is None:
        return None
    return (meant.free_angle_deg + opens_deg(turns_laid(coil), meant.active_coils)) % WHOLE_TURN_DEG


def turns_laid(coil: Coil) -> float:
    """The turns laid of one body."""
    return coil.plan.turns_to_wind / wanted_of(coil).bodies


def mandrel_mm(coil: Coil) -> float:
    """The mandrel of the plan."""
    assert coil.plan.mandrel.diameter_mm is not None
    return coil.plan.mandrel.diameter_mm


def legs_meant_deg(coil: Coil) -> float | None:
    """The angle that was meant, in the state in which the coil was measured."""
    assert isinstance(coil.meant, TorsionSpring)
    return coil.meant.free_angle_deg


def legs_off_deg(coil: Coil, angle_deg: float) -> float:
    """By how much legs at an angle stand further on than meant, the nearer way round."""
    meant_deg = legs_meant_deg(coil)
    if meant_deg is None:
        found = "the need names no free_angle, so the legs may stand as they like"
        raise SenselessError("angle", found, "a free_angle in the need, or --came-out")
    return (angle_deg - meant_deg + 180.0) % WHOLE_TURN_DEG - 180.0
