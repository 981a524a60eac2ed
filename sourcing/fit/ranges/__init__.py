"""A need's tolerances as closed ranges, outside which no spring can be fit or near.

They only ever leave out what the judge would refuse; what he refuses for other reasons (stress, say) is left to him.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from sourcing.fit.ranges import pressed, pulled, turned
from sourcing.need.model import Need
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.model import Bench

OF_KIND: Mapping[str, Callable[[Need, Bench], Ranges]] = {
    "compression": pressed.ranges,
    "conical": pressed.ranges,
    "extension": pulled.ranges,
    "torsion": turned.ranges,
}


def ranges_of(need: Need, bench: Bench) -> Ranges:
    """The ranges for a need at a bench: every spring that the judge would call yes or near lies in them.

    A guarded need may be of a kind that is not worked out: it is answered before any spring is asked for.
    """
    return OF_KIND[need.kind](need, bench) if need.kind in OF_KIND else Ranges(need.kind)
