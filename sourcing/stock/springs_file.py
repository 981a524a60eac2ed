"""What a file of springs holds, once it has been read."""

from __future__ import annotations

from dataclasses import dataclass, field

from sourcing.files.findings import Finding, Place
from sourcing.stock.model import StockSpring


@dataclass(slots=True)
class SpringsFile:
    """All that a file of springs holds, and all that is wrong with it; `ids` has those with mistakes too.

    `kept`: the file stands as an index has it, where its springs are; here are only the parts that the others must
    agree with.
    """

    file: str
    springs: list[StockSpring] = field(default_factory=list[StockSpring])
    ids: list[tuple[str, Place]] = field(default_factory=list[tuple[str, Place]])
    findings: list[Finding] = field(default_factory=list[Finding])
    warnings: list[Finding] = field(default_factory=list[Finding])
    kept: bool = False
