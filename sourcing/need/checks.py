"""Whether the figures of a need agree with each other. Each check goes from a need as read to findings."""

from __future__ import annotations

from typing import cast

from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.need import checks_extension, checks_pressed, checks_torsion
from sourcing.need.records import AnyNeed, AnyPressedNeed, ExtensionNeed, TorsionNeed


def need_findings(need: Read[AnyNeed]) -> list[Finding]:
    """All that does not agree in a need, of whatever kind."""
    if isinstance(need.record, TorsionNeed):
        return checks_torsion.findings(cast("Read[TorsionNeed]", need))
    if isinstance(need.record, ExtensionNeed):
        return checks_extension.findings(cast("Read[ExtensionNeed]", need))
    return checks_pressed.findings(cast("Read[AnyPressedNeed]", need))
