"""The mandrel of a winding plan written as a solid or a drawing, as `springwright wind --solid` asks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from sourcing.need.model import Need
    from sourcing.stock.model import Bench
    from sourcing.winding.model import Refusal, WindingPlan
    from sourcing.winding.solid.shape import MandrelSolid, ShankKind

SUFFIXES = (".stl", ".3mf", ".svg")
SHANKS = ("hex", "round", "drill")

SolidFiles = Annotated[
    list[str] | None,
    typer.Option("--solid", metavar="OUT", help="write the mandrel: a solid OUT.stl, OUT.3mf, a drawing OUT.svg"),
]
ShankWord = Annotated[
    str | None, typer.Option("--shank", metavar="KIND", help="the solid's shank: hex, round or drill (three flats)")
]


@dataclass(frozen=True, slots=True)
class AskedSolids:
    """The files to write, and the shank wished; None: what suits the bench."""

    files: tuple[str, ...]
    shank: ShankKind | None


def asked_solids(files: Sequence[str], shank: str | None) -> AskedSolids:
    """What is asked, refused before anything is worked out where it cannot be done.

    Raises typer.BadParameter for a suffix or a shank that there is not, Mistakes for a file that cannot be written.
    """
    from sourcing.files.writing import refuse_unwritable

    for file in files:
        if Path(file).suffix.lower() not in SUFFIXES:
            known = f"{', '.join(SUFFIXES[:-1])} or {SUFFIXES[-1]}"
            raise typer.BadParameter(f"{file} does not end in {known}", param_hint="--solid")
        refuse_unwritable(file)
    if shank is None or shank == "hex" or shank == "round" or shank == "drill":
        return AskedSolids(tuple(files), shank)
    raise typer.BadParameter(f"{shank} is no shank; expected {', '.join(SHANKS)}", param_hint="--shank")


@dataclass(frozen=True, slots=True)
class WrittenSolids:
    """The files that were written, none where none was asked for or can be made, and what is to be said."""

    files: tuple[str, ...] = ()
    said: tuple[str, ...] = ()

    @property
    def key(self) -> dict[str, object]:
        """The key of the sheet's JSON document; none where nothing was asked for."""
        return {"solid": {"files": list(self.files), "said": list(self.said)}} if self.said else {}


def write_solids(asked: AskedSolids, answer: WindingPlan | Refusal, need: Need, bench: Bench) -> WrittenSolids:
    """Write the plan's mandrel to each file, and say what is to be said of it. Raises Mistakes."""
    from sourcing.files.writing import write_file
    from sourcing.winding.model import Refusal
    from sourcing.winding.solid.coil import coil_of, why_no_solid
    from sourcing.winding.solid.release import release_of
    from sourcing.winding.solid.shape import shank_for, solid_of
    from sourcing.winding.solid.words import solid_said

    if not asked.files or isinstance(answer, Refusal):
        return WrittenSolids()
    if (why := why_no_solid(answer)) is not None:
        return WrittenSolids((), (f"Nothing was written: {why}.",))
    coil = coil_of(answer)
    solid = solid_of(coil, release_of(coil), need.job, asked.shank or shank_for(bench), bench.units)
    encoded = [(file, _encoded(solid, Path(file).suffix.lower(), need, bench)) for file in asked.files]
    for file, content in encoded:
        write_file(file, content)
    said = (*solid_said(answer, solid, need, bench), f"Written to {' and '.join(asked.files)}.")
    return WrittenSolids(asked.files, said)


def _encoded(solid: MandrelSolid, suffix: str, need: Need, bench: Bench) -> bytes:
    if suffix == ".svg":
        from sourcing.sheets.drawing.mandrel import turning_drawing

        return turning_drawing(solid, need.job, bench.units).svg("mandrel").encode()
    from sourcing.files.solids import Part, stl_of, threemf_of
    from sourcing.winding.solid.mesh import meshes_of
    from sourcing.winding.solid.printed import lies_on_bed

    meshes = meshes_of(solid, lies_on_bed(solid, bench))
    parts = [Part(mesh.vertices, mesh.triangles) for mesh in meshes]
    return stl_of(parts) if suffix == ".stl" else threemf_of(parts, need.job)
