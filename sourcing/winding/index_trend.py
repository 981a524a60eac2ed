"""How the flow stress of a wire goes with the spring index it is wound to: its logarithm on a straight line.

σ/Rm = e^θ (C_m / C₀)^p. That it grows with the index is an observed trend, not derived: handbook arbor figures, which
were recalled and not read, want about its tenth power. One flow stress for every index is what is assumed until
trial coils of different indices disagree.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, hypot, log, sqrt

SLOPE, SLOPE_SD = 0.10, 0.05
"""The power of the index, and its doubt: the winding model's, fitted to figures that were recalled (from memory)."""

AS_ONE_AT_INDEX = 12.9
"""The index on the mandrel at which the winding model's two forms give music wire one flow stress:
1.053 (C_m / 10)^0.10 = 1.08."""


@dataclass(frozen=True, slots=True)
class Trend:
    """The line, told at the index where the doubts of its height and of its slope know nothing of each other.

    `ratio` is the flow stress over the least tensile strength at `index`; `ratio_sd` is relative.
    """

    index: float
    ratio: float
    ratio_sd: float
    slope: float = SLOPE
    slope_sd: float = SLOPE_SD

    def ratio_at(self, index: float) -> float:
        """The flow stress over the tensile strength at an index on the mandrel.

        >>> round(Trend(AS_ONE_AT_INDEX, 1.08, 0.06).ratio_at(10.0), 3)
        1.053
        """
        return self.ratio * (index / self.index) ** self.slope

    def ratio_sd_at(self, index: float) -> float:
        """Its relative standard deviation there: that of the height, and that of the slope times the way along.

        >>> round(Trend(10.0, 1.0, 0.03).ratio_sd_at(20.0), 4)
        0.0458
        """
        return hypot(self.ratio_sd, log(index / self.index) * self.slope_sd)

    def after(self, index: float, change: float, believed_sd: float, sd_left: float) -> Trend:
        """The line once a coil at an index has moved ln σ there by `change` and left it a doubt of `sd_left`.

        `believed_sd` is the doubt there before; where a surprise has widened it, the height takes what the slope does
        not have. With x = ln(C_m / C₀): θ and p move by their covariance with θ + p x over its variance, and lose that
        much of theirs; then C₀ goes to where the two are independent again.
        """
        way, slope_variance = log(index / self.index), self.slope_sd**2
        variance = believed_sd**2
        height_variance = variance - way**2 * slope_variance
        of_height, of_slope = height_variance / variance, way * slope_variance / variance
        lost = variance - sd_left**2
        height_variance -= of_height**2 * lost
        slope_variance -= of_slope**2 * lost
        shared = -of_height * of_slope * lost
        slope, moved = self.slope + of_slope * change, -shared / slope_variance
        return Trend(
            index=self.index * exp(moved),
            ratio=self.ratio * exp(of_height * change + slope * moved),
            ratio_sd=sqrt(height_variance + shared * moved),
            slope=slope,
            slope_sd=sqrt(slope_variance),
        )
