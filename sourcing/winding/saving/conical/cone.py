"""The cone that was meant."""

from __future__ import annotations

from sourcing.springs.model import ConicalSpring
from sourcing.winding.saving.coil import Coil


def wanted_of(coil: Coil) -> ConicalSpring:
    """The cone that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, ConicalSpring)
    return coil.plan.wanted
