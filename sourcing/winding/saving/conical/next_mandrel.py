"""The mandrel of the cone after one that came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.mandrel import as_turned, laid_cone
from sourcing.winding.model import Mandrel
from sourcing.winding.presetting import as_laid
from sourcing.winding.saving.coil import Coil
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.trials import Knowledge


def next_mandrel(coil: Coil, known: Knowledge) -> Mandrel:
    """The mandrel that gives the cone that was meant, as this coil shows the wire to spring back."""
    meant = coil.plan.finished.spring
    assert isinstance(meant, ConicalSpring)
    laid = laid_cone(as_laid(meant, wanted_of(coil)), known.mandrel_mm, known.pitch.share)
    return replace(coil.plan.mandrel, profile=as_turned(laid))


def said_of_next(coil: Coil, then: Mandrel, begins: str) -> Iterator[str]:
    """Its profile beside that of the mandrel that this coil was wound on."""
    now, was = (
        ", ".join(show_diameter(point.diameter_mm, coil.units).split(" ")[0] for point in mandrel.profile)
        for mandrel in (then, coil.plan.mandrel)
    )
    if now == was:
        yield f"{begins}: the same mandrel, and it will come out so again."
        return
    unit = show_diameter(then.profile[0].diameter_mm, coil.units).split(" ")[1]
    along = ", ".join(show_length(point.height_mm, coil.units).split(" ")[0] for point in then.profile)
    at = f"at {along} {unit} along it from the small end"
    yield f"{begins}: a mandrel turned to {now} {unit}, {at}; this one had {was}."
