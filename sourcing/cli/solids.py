"""The mandrel of a winding plan written as a solid or a drawing, as `springwright wind --solid` asks."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli.words import wrong_word
from sourcing.files.findings import quoted

if TYPE_CHECKING:
    from sourcing.need.model import Need
    from sourcing.stock.model import Bench
    from sourcing.winding.model import Refusal, WindingPlan
    from sourcing.winding.solid.made import Held
    from sourcing.winding.solid.shape import MandrelSolid

SUFFIXES = (".stl", ".3mf", ".svg")
SHANKS = ("hex", "round", "drill", "sleeve")

NOTHING_WRITTEN = "Nothing was written"

SolidFiles = Annotated[
    list[str] | None,
    typer.Option("--solid", metavar="OUT", help="write the mandrel: a solid OUT.stl, OUT.3mf, a drawing OUT.svg"),
]
ShankWord = Annotated[
    str | None,
    typer.Option("--shank", metavar="KIND", help="the solid's shank: hex, round, drill; or sleeve, on a steel rod"),
]


@dataclass(frozen=True, slots=True)
class AskedSolids:
    """The files to write, and the shank wished; None: what suits the bench."""

    files: tuple[str, ...]
    shank: Held | None

    @property
    def meshed(self) -> bool:
        """Whether a solid is asked for, and not a drawing alone."""
        return any(Path(file).suffix.lower() != ".svg" for file in self.files)

    @property
    def printed(self) -> bool:
        """Whether the mandrel is printed: a solid is, and so is a sleeve."""
        return self.meshed or self.shank == "sleeve"


def asked_solids(files: Sequence[str], shank: str | None) -> AskedSolids:
    """What is asked, refused before anything is worked out where it cannot be done.

    Raises WrongWords for a suffix or a shank that there is not, Mistakes for a file that cannot be written.
    """
    from sourcing.files.writing import refuse_unwritable

    if shank is not None and not files:
        raise wrong_word("--shank", "there is no solid", "it together with --solid")
    if len({os.path.realpath(file) for file in files}) < len(files):
        raise wrong_word("--solid", "names one file twice", "each once")
    for file in files:
        if Path(file).suffix.lower() not in SUFFIXES:
            known = f"{', '.join(SUFFIXES[:-1])} or {SUFFIXES[-1]}"
            named = quoted(file) if file else "an empty name"
            raise wrong_word("--solid", f"{named} does not end in {known}", "a file of one of these kinds")
        refuse_unwritable(file)
    if shank is None or shank == "hex" or shank == "round" or shank == "drill" or shank == "sleeve":
        return AskedSolids(tuple(files), shank)
    raise wrong_word("--shank", f"{quoted(shank)} is no shank", ", ".join(SHANKS))


@dataclass(frozen=True, slots=True)
class WrittenSolids:
    """The answer with the mandrel that was made for it, its files, and what is to be said of it.

    No files where none was asked for or can be made; then `answer` says why not, and `refused` that it does.
    """

    answer: WindingPlan | Refusal
    files: tuple[str, ...] = ()
    said: tuple[str, ...] = ()
    refused: bool = False

    @property
    def key(self) -> dict[str, object]:
        """The key of the sheet's JSON document; none where nothing was asked for."""
        return {"solid": {"files": list(self.files), "said": list(self.said)}} if self.said else {}


def write_solids(asked: AskedSolids, answer: WindingPlan | Refusal, need: Need, bench: Bench) -> WrittenSolids:
    """Write the plan's mandrel to each file, and give the plan that is wound on it. Raises Mistakes.

    The plan is one for a printed mandrel where the mandrel is printed.
    """
    from sourcing.files.writing import write_files
    from sourcing.winding.model import Refusal
    from sourcing.winding.solid.in_steps import wound_on
    from sourcing.winding.solid.made import became_a_sleeve, solid_for
    from sourcing.winding.solid.words import solid_said

    if not asked.files or isinstance(answer, Refusal):
        return WrittenSolids(answer)
    solid = solid_for(answer, need.job, bench, asked.shank, asked.meshed)
    if isinstance(solid, Refusal):
        return WrittenSolids(solid, (), (f"{NOTHING_WRITTEN}: {solid.why}.",), True)
    write_files({file: _encoded(solid, Path(file).suffix.lower(), need, bench) for file in asked.files})
    told = solid_said(answer, solid, bench, asked.printed, asked.meshed)
    said = (*became_a_sleeve(answer, solid, need.job, bench, asked.shank), *told, _written(asked.files))
    return WrittenSolids(wound_on(answer, solid, need, bench, asked.printed), asked.files, said)


def _written(files: Sequence[str]) -> str:
    return f"Written to {' and '.join(files)}."


def _encoded(solid: MandrelSolid, suffix: str, need: Need, bench: Bench) -> bytes:
    if suffix == ".svg":
        from sourcing.sheets.drawing.mandrel import turning_drawing

        return turning_drawing(solid, need.job, bench.units).svg("mandrel").encode()
    from sourcing.files.solids import Part, stl_of, threemf_of
    from sourcing.winding.solid.bed import STANDING, meshes_of, on_bed

    lies = None if bench.printer_bed_mm is None else on_bed(solid, bench.printer_bed_mm)
    parts = [Part(mesh.vertices, mesh.triangles) for mesh in meshes_of(solid, lies or STANDING)]
    return stl_of(parts) if suffix == ".stl" else threemf_of(parts, need.job)
