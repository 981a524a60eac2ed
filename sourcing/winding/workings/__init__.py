"""Every main figure of a winding sheet worked out before the reader's eyes.

wire.py      the wire: its flow stress, from prior or trials; pull and crank
mandrel.py   from mandrel to finished diameter: springback, heat, and the doubts of both
laying.py    turns, pitch and wire to cut, kind by kind
chances.py   tries and hours
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from sourcing.figures.working import Working
from sourcing.springs.workings import workings as of_spring
from sourcing.springs.workings.inputs import NOT_STATED, Stated
from sourcing.stock.model import Bench, Spool
from sourcing.winding.learning import learn
from sourcing.winding.model import Made, WindingPlan
from sourcing.winding.trials import Knowledge
from sourcing.winding.workings.chances import chances
from sourcing.winding.workings.laying import laying
from sourcing.winding.workings.mandrel import AFTER_HEAT, AS_WOUND, mandrel
from sourcing.winding.workings.wire import wire

FROM_NEED = "as the need's forces and lengths ask for it"
_DECIDED: tuple[str, ...] = (
    "free_length", "active_coils", "total_coils", "initial_tension", "leg_1", "leg_2", "free_angle", "bodies",
)  # fmt: skip
"""Keys of a spring that the search of its design decides."""


def workings(
    plan: WindingPlan, spool: Spool | None, bench: Bench, quantity: int = 1, stated: Stated = NOT_STATED
) -> tuple[Working, ...]:
    """The workings of a plan; `stated` says where the keys of the spool's record stand."""
    known = known_of(plan, spool)
    made = [(plan.finished, AS_WOUND), *([] if plan.after_heat is None else [(plan.after_heat, AFTER_HEAT)])]
    every = (
        *wire(plan, known.on(_thickest_mm(plan)), stated),
        *mandrel(plan, known, bench),
        *laying(plan, known),
        *(each for of, where in made for each in _finished(of, where)),
        *chances(plan, bench, quantity),
    )
    return tuple(_once(every))


def _thickest_mm(plan: WindingPlan) -> float:
    """The mandrel's diameter; a cone's where it is thickest."""
    return plan.mandrel.diameter_mm or plan.mandrel.profile[-1].diameter_mm


def known_of(plan: WindingPlan, spool: Spool | None) -> Knowledge:
    """What is known of the wire of a plan, from its spool's trials, and what it is wound on."""
    spring = plan.finished.spring
    assert spring.tensile_strength_mpa is not None
    trials = () if spool is None else spool.trials
    known = learn(spring.material, spring.wire_diameter_mm, spring.tensile_strength_mpa, trials)
    return replace(known, wound_on="printed" if plan.mandrel.kind == "printed" else None)


def _finished(made: Made, where: str) -> Iterator[Working]:
    """The figures of a finished spring as describe works them out."""
    needed = dict.fromkeys(_DECIDED, FROM_NEED)
    workings = of_spring(made.spring, made.figures, needed)
    return (each.at(f"{each.where} {where}".strip()) for each in workings)


def _once(every: Iterable[Working]) -> Iterator[Working]:
    """Each figure once: how it was come by before what it is put into."""
    seen: set[str] = set()
    for each in every:
        if each.figure + each.where not in seen:
            seen.add(each.figure + each.where)
            yield each
