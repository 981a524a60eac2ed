"""What is done about an initial tension that is off: the sheet and the answer about a coil in hand say the same."""

from __future__ import annotations

from sourcing.need.model import Need
from sourcing.quantities import show_length
from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring

NOT_PUT_IN = "it cannot be put in afterwards"

LEAN_MORE = "lean the wire further back over the last turn and pull harder, evenly"

READ_AGAIN = "read the scale where the first coils part, not where all of them do"

LEAN_LESS = "lean the wire back less over the last turn, or pull less, evenly"


def take_away(spring: ExtensionSpring, need: Need, units: str) -> str:
    """How a spring loses what it has too much of: it is pulled further than it will ever be (common practice)."""
    longest_mm = max(*(point.at_mm for point in need.working), need.pull_to_fit_mm or 0.0)
    safe_mm = pulled.largest_safe_length_mm(spring, pulled.rate_n_per_mm(spring), spring.initial_tension_n or 0.0)
    bound = f", never past {show_length(safe_mm, units)}" if safe_mm is not None and safe_mm > longest_mm else ""
    return (
        f"pull it a little past {show_length(longest_mm, units)}, its greatest length, twice{bound}, and read again "
        "(common practice, no source)"
    )
