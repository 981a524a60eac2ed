"""What a judgement is made of."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sourcing.quantities import Wanted
from sourcing.springs.life import Making

Verdict = Literal["yes", "near", "no"]


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit, whether it holds, and why in words. A broken hard limit refuses; a broken soft one makes *near*.

    `past` is how far a broken limit of size or stress is overstepped, as a share of what is allowed; `do` is what must
    be done to the spring first for it to hold, such as "cut 5 mm off leg 1".
    """

    limit: str
    holds: bool
    hard: bool
    why: str
    past: float = 0.0
    do: str = ""


@dataclass(frozen=True, slots=True)
class WantedFigure:
    """A figure that the need wants, what the spring gives, and the tolerance of the house for where it states none.

    `at` is the length (mm) or the angle (deg) at which a force or a torque is wanted, None for any other figure.
    """

    figure: str
    unit: str
    wanted: Wanted
    got: float
    house: float
    at: float | None = None
    at_unit: str = "mm"


@dataclass(frozen=True, slots=True)
class Deviation:
    """How far one figure is from what was wanted, in units of its tolerance (capped at 99).

    `at` as in `WantedFigure`.
    """

    figure: str
    at: float | None
    at_unit: str
    unit: str
    wanted: Wanted
    got: float
    tolerance: float
    deviation_over_tolerance: float


@dataclass(frozen=True, slots=True)
class Fit:
    """How well one spring meets one need. `score` is None where the need wants no figure; `chance` is 0..1."""

    fits: Verdict
    score: int | None
    chance: float
    limits: tuple[Limit, ...]
    deviations: tuple[Deviation, ...]

    @property
    def soft_broken(self) -> int:
        """How many soft limits do not hold."""
        return sum(1 for limit in self.limits if not limit.holds and not limit.hard)

    @property
    def to_do(self) -> tuple[str, ...]:
        """What must be done to the spring before it goes in."""
        return tuple(limit.do for limit in self.limits if limit.holds and limit.do)

    @property
    def broken(self) -> tuple[Limit, ...]:
        """The limits that do not hold, hard ones first."""
        return tuple(sorted((limit for limit in self.limits if not limit.holds), key=lambda limit: not limit.hard))


@dataclass(frozen=True, slots=True)
class Spread:
    """How far a spring may be from its figures.

    `diameter_tolerance_mm` is counted in the clearances; the standard deviations (that of the rate is relative) only
    in the chance. `rate_on_diameter` is the power by which an unplanned diameter lowers the rate: 3 where nobody
    corrects for it (1 in a torsion spring), 0 where the maker sets the coils by the force. `initial_tension_off_n` is
    by how much the initial tension to expect is more than the one planned.
    """

    diameter_tolerance_mm: float = 0.0
    diameter_sd_mm: float = 0.0
    free_length_sd_mm: float = 0.0
    rate_sd: float = 0.0
    rate_on_diameter: float = 0.0
    making: Making = Making.UNKNOWN
    free_angle_sd_deg: float = 0.0
    initial_tension_sd_n: float = 0.0
    initial_tension_off_n: float = 0.0
