"""The catalogue of a keeper, found and read. Nothing slow is imported before a file is read.

A catalogue is a folder with springs/*.yaml, spools/*.yaml, bench.yaml and materials.yaml, each optional, or one file of
springs or of spools, which knows the materials.yaml beside it or in the folder above. All files are read before the
mistakes are told.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from sourcing.files.findings import Finding, Mistakes, Place, in_order
from sourcing.materials.model import NO_MATERIALS, OwnMaterials
from sourcing.stock.model import Bench, Catalogue, Spool, StockSpring
from sourcing.stock.springs_file import SpringsFile

if TYPE_CHECKING:
    from sourcing.files.document import Document

CATALOGUE_VARIABLE = "SPRINGWRIGHT_CATALOG"
NONE_KEPT: Mapping[str, SpringsFile] = {}
_MATERIALS = "materials.yaml"
_PARTS = "springs/*.yaml, spools/*.yaml or bench.yaml; `springwright init` makes a catalogue"


def find_catalogue(option: str | None) -> Path:
    """Where the catalogue is: what the option says, else $SPRINGWRIGHT_CATALOG, else the nearest folder catalog.

    The nearest is looked for in the working folder and in those above it. Raises `Mistakes` where there is none.
    """
    if option is not None:
        return Path(option)
    if named := os.environ.get(CATALOGUE_VARIABLE):
        if os.path.exists(named):
            return Path(named)
        found = f"nothing of that name, which ${CATALOGUE_VARIABLE} says"
        raise Mistakes((Finding(Place(named), found, "a catalogue; `springwright init` makes one"),))
    here = Path.cwd()
    for folder in (here, *here.parents):
        if os.path.isdir(folder / "catalog"):
            return Path(os.path.relpath(folder / "catalog", here))
    found = f"no folder of that name in {here} or above it, and no ${CATALOGUE_VARIABLE}"
    raise Mistakes((Finding(Place("catalog"), found, "a catalogue; `springwright init` makes one"),))


def read_catalogue(path: str | os.PathLike[str]) -> Catalogue:
    """The catalogue in a folder, or in one file. Raises `Mistakes` with those of all files."""
    catalogue, mistakes = inspect_catalogue(path)
    if mistakes:
        raise Mistakes(mistakes)
    return catalogue


def inspect_catalogue(path: str | os.PathLike[str]) -> tuple[Catalogue, tuple[Finding, ...]]:
    """What can be read of the catalogue in a folder or in one file, and every mistake in it."""
    read = gathered(path)
    return read.catalogue(), read.mistakes()


def gathered(path: str | os.PathLike[str], kept: Mapping[str, SpringsFile] = NONE_KEPT) -> Gathered:
    """All files of the catalogue in a folder, or one file; those of springs that are `kept` are taken and not read."""
    from sourcing.files.events import collector_off

    name = os.fspath(path)
    with collector_off():
        return _folder(name, kept) if os.path.isdir(name) else _file(name)


def read_springs(path: str | os.PathLike[str]) -> tuple[tuple[StockSpring, ...], tuple[Finding, ...]]:
    """The springs of one file, and the doubts about them. Raises `Mistakes`."""
    read = Gathered()
    read.add_materials_near(os.fspath(path))
    if document := read.load(os.fspath(path)):
        read.add_springs(document)
    if mistakes := read.mistakes():
        raise Mistakes(mistakes)
    catalogue = read.catalogue()
    return catalogue.springs, catalogue.warnings


def read_bench() -> Bench:
    """The bench of the catalogue that is found where no option names one; the defaults where there is none.

    Raises `Mistakes` with those of bench.yaml.
    """
    try:
        file = find_catalogue(None) / "bench.yaml"
    except Mistakes:
        return Bench()
    read = Gathered()
    if file.is_file() and (document := read.load(os.fspath(file))):
        read.add_bench(document)
    if read.findings:
        raise Mistakes(in_order(read.findings))
    return read.bench


@dataclass(slots=True)
class Gathered:
    """What the files read so far hold, and what is wrong with them."""

    bench: Bench = field(default_factory=Bench)
    currency: str = Bench().currency
    materials: OwnMaterials = field(default_factory=lambda: NO_MATERIALS)
    files: list[SpringsFile] = field(default_factory=list[SpringsFile])
    spools: list[Spool] = field(default_factory=list[Spool])
    spool_ids: list[tuple[str, Place]] = field(default_factory=list[tuple[str, Place]])
    findings: list[Finding] = field(default_factory=list[Finding])

    def load(self, file: str) -> Document | None:
        """A file as it is written; None where it cannot be read, with the reason among the findings."""
        from sourcing.files.events import load

        document, findings = load(file)
        self.findings += findings
        return document

    def add_bench(self, document: Document) -> None:
        """Take in bench.yaml."""
        from sourcing.stock.bench import bench_in, currency_in

        self.currency = currency_in(document)
        self.bench, findings = bench_in(document)
        self.findings += findings

    def add_materials_near(self, file: str) -> None:
        """The keeper's own materials for one file of a catalogue: those beside it, or in the folder above."""
        folder = Path(file).parent
        near = next((each for each in (folder, folder / "..") if os.path.lexists(each / _MATERIALS)), None)
        if near is not None:
            self.add_materials(os.path.normpath(near / _MATERIALS))

    def add_materials(self, file: str) -> None:
        """Take in the keeper's own materials."""
        from sourcing.stock.materials import materials_in

        if document := self.load(file):
            read = materials_in(document)
            self.materials = read.materials
            self.findings += read.findings

    def settled(self) -> Mapping[str, object]:
        """What the records of springs and spools look at beside their own text."""
        from sourcing.need.kinds import settled

        return settled(self.materials, self.currency)

    def add_springs(self, document: Document) -> None:
        """Take in the springs of a file."""
        from sourcing.stock.springs import springs_in

        read = springs_in(document, self.settled())
        self.files.append(read)
        self.findings += read.findings

    def add_spools(self, document: Document) -> None:
        """Take in the spools of a file."""
        from sourcing.stock.spools import spools_in

        read = spools_in(document, self.settled(), self.bench.units)
        self.spools += read.spools
        self.spool_ids += read.ids
        self.findings += read.findings

    def mistakes(self) -> tuple[Finding, ...]:
        """Every mistake of all files, in order."""
        from sourcing.stock.lists import told_twice

        spring_ids = (named for read in self.files for named in read.ids)
        twice = [*told_twice(spring_ids, "spring"), *told_twice(self.spool_ids, "spool")]
        return in_order(self.findings, twice)

    def catalogue(self) -> Catalogue:
        """What could be read."""
        springs = tuple(spring for read in self.files for spring in read.springs)
        warnings = in_order(*(read.warnings for read in self.files))
        return Catalogue(springs, tuple(self.spools), self.bench, warnings, self.materials)


def _folder(folder: str, kept: Mapping[str, SpringsFile]) -> Gathered:
    read = Gathered()
    try:
        springs, spools = _files_in(folder, "springs"), _files_in(folder, "spools")
    except OSError as error:
        from sourcing.files.disk import trouble

        read.findings.append(trouble(str(error.filename or folder), error))
        return read
    bench = str(Path(folder, "bench.yaml"))
    if not (springs or spools or os.path.lexists(bench)):
        read.findings.append(Finding(Place(folder), "a folder without a catalogue", _PARTS))
    if os.path.lexists(bench) and (document := read.load(bench)):
        read.add_bench(document)
    if os.path.lexists(own := str(Path(folder, _MATERIALS))):
        read.add_materials(own)
    for file in springs:
        if file in kept:
            read.files.append(kept[file])
        elif document := read.load(file):
            read.add_springs(document)
    for file in spools:
        if document := read.load(file):
            read.add_spools(document)
    return read


def _files_in(folder: str, part: str) -> list[str]:
    """The YAML files of a part of the catalogue in order of their names; hidden ones are not looked at."""
    try:
        names: Iterable[str] = os.listdir(Path(folder, part))
    except FileNotFoundError:
        return []
    return [
        str(Path(folder, part, name))
        for name in sorted(names)
        if name.endswith((".yaml", ".yml")) and not name.startswith(".")
    ]


def _file(file: str) -> Gathered:
    """One file, told by its top key."""
    read = Gathered()
    if not os.path.lexists(file):
        from sourcing.files.disk import missing

        read.findings.append(missing(file, "a catalogue: a folder, or a file of springs or of spools"))
        return read
    read.add_materials_near(file)
    document = read.load(file)
    if document is None:
        return read
    keys = document.value if isinstance(document.value, dict) else {}
    if "spools" in keys and "springs" not in keys:
        read.add_spools(document)
    elif not {"job", "kind", "working", "pocket"}.isdisjoint(keys):
        read.findings.append(Finding(document.start(), "a need", "a catalogue: a folder, or springs: or spools:"))
    elif not {"currency", "rods", "tools", "oven", "sellers", "tolerances", "prefer"}.isdisjoint(keys):
        found = "a bench file"
        read.findings.append(Finding(document.start(), found, "the folder it lies in, or springs: or spools:"))
    elif "materials" in keys and "springs" not in keys:
        found = "a file of materials"
        read.findings.append(Finding(document.start(), found, "the folder it lies in, or springs: or spools:"))
    else:
        read.add_springs(document)
    return read
