"""The mandrel of the cone after one that came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.mandrel import as_turned, laid_cone
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.model import Mandrel
from sourcing.winding.presetting import as_laid
from sourcing.winding.saving.coil import Coil
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.trials import Knowledge


def next_mandrel(coil: Coil, known: Knowledge) -> Mandrel:
    """The mandrel that gives the cone that was meant, as this coil shows the wire to spring back.

    The same one still where the two are nowhere more than `TURNED_STEP_MM` apart: no mandrel is turned or printed to
    less than that, so that another would be no surer to be nearer.
    """
    meant, this = coil.plan.finished.spring, coil.plan.mandrel
    assert isinstance(meant, ConicalSpring)
    then = replace(
        this, profile=as_turned(laid_cone(as_laid(meant, wanted_of(coil)), known.mandrel_mm, known.pitch.share))
    )
    return this if _apart_mm(this, then) <= TURNED_STEP_MM + 1e-6 else then


def _apart_mm(one: Mandrel, other: Mandrel) -> float:
    """How far two mandrels of the same turns differ at most, in diameter."""
    pairs = zip(one.profile, other.profile, strict=True)
    return max(abs(here.diameter_mm - there.diameter_mm) for here, there in pairs)


def said_of_next(coil: Coil, then: Mandrel, begins: str) -> Iterator[str]:
    """Its profile beside that of the mandrel that this coil was wound on."""
    if then == coil.plan.mandrel:
        step = show_diameter(TURNED_STEP_MM, coil.units)
        yield (
            f"{begins}: the same mandrel. This coil asks for one that is nowhere more than {step} thicker or thinner, "
            "and none is turned or printed finer than that."
        )
        return
    now, was = (
        ", ".join(show_diameter(point.diameter_mm, coil.units).split(" ")[0] for point in mandrel.profile)
        for mandrel in (then, coil.plan.mandrel)
    )
    unit = show_diameter(then.profile[0].diameter_mm, coil.units).split(" ")[1]
    along = ", ".join(show_length(point.height_mm, coil.units).split(" ")[0] for point in then.profile)
    at = f"at {along} {unit} along it from the small end"
    yield f"{begins}: a mandrel {then.kind} to {now} {unit}, {at}; this one had {was}."
