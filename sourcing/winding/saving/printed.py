"""The plan of a coil that is wound on a printed mandrel."""

from __future__ import annotations

from dataclasses import replace

from sourcing.need.model import Need
from sourcing.stock.model import Bench, Spool
from sourcing.winding.model import Refusal, WindingPlan, Wire
from sourcing.winding.plan import plan_winding


def plan_on_printed(
    need: Need, wire: Wire | Spool, bench: Bench, mandrel_mm: float | None = None
) -> WindingPlan | Refusal:
    """How to wind the need's spring on a printed mandrel, the best one or the one given; or why not."""
    made = plan_winding(need, wire, replace(bench, rods_mm=()), mandrel_mm, printed=True)
    return made if isinstance(made, Refusal) else replace(made, mandrel=replace(made.mandrel, kind="printed"))
