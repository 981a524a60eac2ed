"""Every figure of a spring's description worked out before the reader's eyes, in the order of the description.

inputs.py       what stands in the file, or follows from it: wire, diameters, coils; what the tables of wire say
compression.py  a cylinder
conical.py      a cone
extension.py    an extension spring
torsion.py      a torsion spring
endurance.py    what any of them bears
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from sourcing.figures.working import Working
from sourcing.springs.describe import AnyDescription
from sourcing.springs.model import Spring
from sourcing.springs.workings import compression, conical, extension, torsion
from sourcing.springs.workings.inputs import NOT_STATED, Stated

OF_KIND: Mapping[str, Callable[[Any, Any, Stated], Iterator[Working]]] = {
    "compression": compression.workings,
    "conical": conical.workings,
    "extension": extension.workings,
    "torsion": torsion.workings,
}
"""The workings of each kind."""


def workings(spring: Spring, figures: AnyDescription, stated: Stated = NOT_STATED) -> tuple[Working, ...]:
    """The workings of a description; `stated` says where the keys of its record stand."""
    return tuple(OF_KIND[spring.kind](spring, figures, stated))
