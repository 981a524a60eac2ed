"""`springwright init`: a new bench folder with a commented catalogue."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from sourcing.cli import door

STARTER = Path(__file__).parent.parent / "starter"


def lay_down(folder: Path) -> tuple[Path, ...]:
    """Write the starter files into `folder` and return their paths.

    Raises Mistakes where any of them is there already, or cannot be written; then nothing was changed.
    """
    from sourcing.files.findings import Finding, Mistakes, Place

    names = sorted(path.relative_to(STARTER) for path in STARTER.rglob("*.yaml"))
    targets = tuple(folder / name for name in names)
    there = [Finding(Place(str(path)), "is there already", "a new bench folder") for path in targets if path.exists()]
    if there:
        raise Mistakes(tuple(there))
    written: list[Path] = []
    try:
        for name, target in zip(names, targets, strict=True):
            target.parent.mkdir(parents=True, exist_ok=True)
            written.append(target)
            target.write_bytes((STARTER / name).read_bytes())
    except OSError as error:
        for target in written:
            target.unlink(missing_ok=True)
        raise Mistakes(
            (Finding(Place(str(folder)), error.strerror or "cannot be written", "a folder to write to"),)
        ) from error
    return targets


def command(
    folder: Annotated[str, typer.Argument(metavar="[FOLDER]", help="where; the working folder if left out")] = ".",
) -> None:
    """Make a new bench folder: a catalogue with comments, and a need to begin with.

    Example: springwright init my-bench
    """
    from sourcing.sheets.text import line

    for path in lay_down(Path(folder)):
        door.print_text([line(f"wrote {path}")])
    need = Path(folder) / "need.yaml"
    door.print_text(["", line(f"Next: cd {folder}; edit the files; springwright source {need.name}")])
