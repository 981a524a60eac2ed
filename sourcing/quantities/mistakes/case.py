"""A text that could not be read, as the checks look at it."""

from __future__ import annotations

from dataclasses import dataclass

from sourcing.quantities.kinds import Kind


@dataclass(frozen=True, slots=True)
class Case:
    """The part at fault, the whole field it stands in, and the kind of figure wanted; both texts are tidied.

    `wanted` is true where ranges, bounds and tolerances are read as well.
    """

    part: str
    whole: str
    kind: Kind
    wanted: bool = False

    def instead(self, *parts: str) -> tuple[str, ...]:
        """The whole text with each of these in the place of the part.

        >>> from sourcing.quantities.kinds import LENGTH
        >>> Case("2 mmm", "24 ± 2 mmm", LENGTH).instead("2 mm", "2 cm")
        ('24 ± 2 mm', '24 ± 2 cm')
        """
        return tuple(self.whole.replace(self.part, part, 1) for part in parts)
