"""By which share of the opening of the diameter the pitch of a wire opens: assumed first, then as its trial coils show.

p_f/p_m = 1 + a (D_f/D_m − 1). Each coil of which both pitches were measured reads the share a, and moves and narrows
it; it is taken to be the same at every spring index (assumed). A coil laid wire against wire that stays closed reads
none.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, sqrt

from sourcing.materials.model import Material
from sourcing.stock.model import Trial
from sourcing.winding.coil_reading import NORMAL_95, SURPRISE
from sourcing.winding.heat_change import as_wound
from sourcing.winding.measuring import CALIPER_SD_MM, LEAST_GAP_MM, LENGTH_DOUBT, PITCH_SD_MM, sd_of_mandrel_mm
from sourcing.winding.turns import pitch_ratio_sd

PITCH_SHARE, PITCH_SHARE_SD = 0.3, 0.1
"""The share where the wire cannot turn about its own axis, and one standard deviation of it.

Assumed for this project; wire that can turn would open by up to the square of the ratio.
"""


@dataclass(frozen=True, slots=True)
class PitchReading:
    """What one coil shows, as wound: D_f/D_m, p_f/p_m, and the share that follows, with its standard deviation."""

    opening: float
    ratio: float
    sd: float

    @property
    def share(self) -> float:
        """a = (p_f/p_m − 1) / (D_f/D_m − 1)."""
        return (self.ratio - 1.0) / (self.opening - 1.0)

    @property
    def can_be(self) -> bool:
        """Whether the pitch grew, and by no more than that of wire that turns freely about its own axis.

        Two standard deviations of the reading are let pass.
        """
        let_pass = 2.0 * self.sd * (self.opening - 1.0)
        return 1.0 - let_pass <= self.ratio <= self.opening**2 + let_pass


@dataclass(frozen=True, slots=True)
class PitchShare:
    """The share a, one standard deviation of it, how many coils showed it, and whether the last was a surprise."""

    share: float = PITCH_SHARE
    sd: float = PITCH_SHARE_SD
    coils: int = 0
    surprising: bool = False

    def after(self, reading: PitchReading | None) -> PitchShare:
        """What is known once this coil was measured too: 1/u² of both added up, and the shares weighed by them.

        A coil more than three standard deviations off is a surprise: the share goes where it points, and the doubt is
        widened until its band of 95 % reaches back to what was believed before, as wide as at first at least; no coil
        before it counts.

        >>> round(PitchShare().after(PitchReading(1.25, 1.125, 0.1)).share, 3)
        0.4
        """
        if reading is None or not reading.can_be:
            return self
        if abs(reading.share - self.share) > SURPRISE * hypot(self.sd, reading.sd):
            share = max(0.0, reading.share)
            doubt = max(PITCH_SHARE_SD, reading.sd, abs(share - self.share) / NORMAL_95)
            return PitchShare(share, doubt, 1, surprising=True)
        before, now = self.sd**-2, reading.sd**-2
        share = (before * self.share + now * reading.share) / (before + now)
        return PitchShare(share, 1.0 / sqrt(before + now), self.coils + 1)

    def ratio_sd(self, opening: float) -> float:
        """The relative standard deviation of the pitch after release; 0 where nothing opens."""
        return pitch_ratio_sd(opening, self.share, self.sd) if opening > 1.0 else 0.0


def pitch_reading(trial: Trial, wire_diameter_mm: float, material: Material) -> PitchReading | None:
    """What a trial coil shows; None where a pitch was not measured, nothing opened, or it was laid close and stayed so.

    Heat leaves the free length (assumed), so that a pitch changes by it as the diameter does.
    """
    wound_mm, came_mm, wire_mm = trial.pitch_wound_mm, trial.pitch_mm, wire_diameter_mm
    if wound_mm is None or came_mm is None:
        return None
    measured_mm, laid_mm = trial.outside_diameter_mm - wire_mm, trial.mandrel_mm + wire_mm
    mean_mm, _ = as_wound(measured_mm, trial.heated, material)
    opening_sd = hypot(CALIPER_SD_MM / mean_mm, sd_of_mandrel_mm(trial.on) / laid_mm)
    return reading_of(mean_mm / laid_mm, opening_sd, wound_mm, came_mm * mean_mm / measured_mm, wire_mm)


def reading_of(
    opening: float, opening_sd: float, laid_mm: float, came_mm: float, wire_diameter_mm: float
) -> PitchReading | None:
    """What a pitch as it was let go shows beside the one laid; `opening_sd`: of D_f/D_m, relative.

    None where nothing opened, or turns laid close stayed so.

    >>> reading = reading_of(1.25, 0.005, 4.0, 4.3, 0.8)
    >>> reading and round(reading.share, 3)
    0.3
    """
    close_mm = wire_diameter_mm + LEAST_GAP_MM
    if opening <= 1.0 or max(laid_mm, came_mm) < close_mm:
        return None
    ratio = came_mm / laid_mm
    laid_sd_mm = hypot(PITCH_SD_MM, LENGTH_DOUBT * max(0.0, laid_mm - wire_diameter_mm))
    of_pitch = ratio * hypot(laid_sd_mm / laid_mm, PITCH_SD_MM / came_mm)
    of_opening = (ratio - 1.0) / (opening - 1.0) * opening * opening_sd
    return PitchReading(opening, ratio, hypot(of_pitch, of_opening) / (opening - 1.0))
