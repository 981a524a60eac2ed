"""A trial coil written down at its spool, or taken back: an entry under `trials`, all else in the file as it stands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING

from sourcing.files.disk import read_raw
from sourcing.files.findings import Finding, Mistakes, Place, WrongWords, quoted
from sourcing.files.replacing import change_file
from sourcing.quantities import show_length
from sourcing.stock.model import Catalogue, Spool, Trial
from sourcing.stock.trial_bounds import DATE, wire_in_trial_mm, wrong_date

if TYPE_CHECKING:
    from sourcing.files.document import Document
    from sourcing.stock.spools import SpoolsRead

KEYS = (
    *("date", "mandrel", "turns", "outside_diameter", "inside_diameter", "stop_angle", "leg_angle", "initial_tension"),
    *("pitch_wound", "pitch", "heated", "pull", "on"),
)
"""The keys of a trial in the order in which they are written."""

_DIAMETERS = {"outside_diameter": "--outside", "inside_diameter": "--inside"}
_OPTIONS = {**_DIAMETERS, "initial_tension": "--tension"}


@dataclass(frozen=True, slots=True)
class Tried:
    """A trial written down: its spool with it, the line it stands on, the lines as they read now, the whole file."""

    spool: Spool
    file: str
    line: int
    changed: tuple[str, ...]
    raw: bytes


@dataclass(frozen=True, slots=True)
class TakenBack:
    """A trial taken back: its spool without it, the trial, the line it stood on, its lines, the whole file."""

    spool: Spool
    trial: Trial
    file: str
    line: int
    changed: tuple[str, ...]
    raw: bytes


def take_back_trial(catalogue: Catalogue, spool: Spool, dry_run: bool = False) -> TakenBack:
    """Take the last trial of a spool out of its file; `dry_run` leaves the file as it is.

    Raises `Mistakes` where the spool has none, or where the file cannot be changed.
    """
    file = spool.place.file or ""

    def change(raw: bytes) -> TakenBack:
        from sourcing.files.splicing import source_of, without_last_entry

        source = source_of(raw, file)
        number = source.number_of("spools", spool.id)
        before = _spool_in(raw, file, catalogue, number)
        if not before.trials:
            found = f"{quoted(spool.id)} has no trial to take back"
            raise Mistakes((Finding(before.place, found, "a spool with a trial; nothing was changed"),))
        edited = without_last_entry(source, "spools", number, "trials")
        after = _spool_in(edited.raw, file, catalogue, number)
        return TakenBack(after, before.trials[-1], file, edited.line, edited.changed, edited.raw)

    return change(read_raw(file)) if dry_run else change_file(file, change)


def _spool_in(raw: bytes, file: str, catalogue: Catalogue, number: int) -> Spool:
    """The spool of that number as the reader takes it. Raises `Mistakes` with what he finds wrong in the file."""
    from sourcing.files.splicing import source_of

    read = _read(source_of(raw, file).document, catalogue)
    if read.findings:
        raise Mistakes(tuple(read.findings))
    return read.spools[number]


def _read(document: Document, catalogue: Catalogue) -> SpoolsRead:
    """A file of spools as the reader takes it."""
    from sourcing.need.kinds import settled
    from sourcing.stock.spools import spools_in

    bench = catalogue.bench
    return spools_in(document, settled(catalogue.materials, bench.currency), bench.units)


def write_trial(catalogue: Catalogue, spool: Spool, given: Mapping[str, str], dry_run: bool = False) -> Tried:
    """Write a trial, as keys and texts, at the end of its spool's; `dry_run` leaves the file as it is.

    Raises `WrongWords` with all that is wrong with the trial, `Mistakes` where the file cannot be changed.
    """
    file = spool.place.file or ""
    if "mandrel" not in given:
        raise WrongWords((Finding(Place(None), "no --mandrel", "the rod that the coil was wound on, as measured"),))
    if len(given.keys() & _DIAMETERS.keys()) != 1:
        found = "both --outside and --inside" if given.keys() >= _DIAMETERS.keys() else "neither --outside nor --inside"
        raise WrongWords((Finding(Place(None), found, "one diameter of the coil: the other follows"),))
    wrong = wrong_date(given["date"], date.today()) if "date" in given else None
    if wrong is not None:
        raise WrongWords((Finding(Place(None), f"--date: {wrong}", DATE),))
    trial = {key: given[key] for key in KEYS if key in given}

    def change(raw: bytes) -> Tried:
        from sourcing.files.splicing import source_of, with_inner_entry

        source = source_of(raw, file)
        number = source.number_of("spools", spool.id)
        edited = with_inner_entry(source, "spools", number, "trials", trial)
        written = _read_back(edited.raw, file, catalogue, number, trial)
        _held_by_the_spool(written, catalogue.bench.units)
        return Tried(written, file, edited.line, edited.changed, edited.raw)

    return change(read_raw(file)) if dry_run else change_file(file, change)


def _read_back(raw: bytes, file: str, catalogue: Catalogue, number: int, trial: Mapping[str, str]) -> Spool:
    """The spool of that number as the reader takes it. Raises `WrongWords` where he finds its new trial wrong."""
    from sourcing.files.splicing import source_of

    source = source_of(raw, file)
    read = _read(source.document, catalogue)
    if read.findings:
        spool = source.records("spools")[number]
        trials = spool["trials"] if isinstance(spool, dict) else None
        last = trials[-1] if isinstance(trials, list) else None
        keys = {source.document.place(last, key): key for key in trial} if isinstance(last, dict) else {}
        raise WrongWords(tuple(_as_options(read.findings, keys)))
    return read.spools[number]


def _held_by_the_spool(spool: Spool, units: str) -> None:
    """Raises `WrongWords` where the last trial has more wire in its turns than is left on its spool.

    A file may say so, for its wire is counted off afterwards.
    """
    trial, left_mm = spool.trials[-1], spool.length_left_mm
    used_mm = wire_in_trial_mm(trial.mandrel_mm, spool.wire_diameter_mm, trial.turns or 0.0)
    if left_mm is not None and used_mm > left_mm:
        used, left = (show_length(mm, units) for mm in (used_mm, left_mm))
        found = f"--turns: {trial.turns:g} turns take {used} of wire, and {spool.id} has {left} left"
        expected = (
            "the turns that the coil has; or, if there was more on the spool, count it anew first, with the wire of "
            f"this coil: springwright stock put {spool.id} LENGTH, or length_left in {spool.place.file}"
        )
        raise WrongWords((Finding(Place(None), found, expected),))


def _as_options(findings: list[Finding], keys: Mapping[Place, str]) -> Iterator[Finding]:
    """The findings, each with the option that it is about."""
    for finding in findings:
        key = keys.get(finding.place)
        found = f"{option_of(key)}: {finding.found}" if key else finding.found
        yield replace(finding, place=Place(None), found=found)


def option_of(key: str) -> str:
    """The option that gives a key of a trial.

    >>> option_of("pitch_wound"), option_of("outside_diameter")
    ('--pitch-wound', '--outside')
    """
    return _OPTIONS.get(key, "--" + key.replace("_", "-"))
