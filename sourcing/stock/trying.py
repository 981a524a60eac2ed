"""A trial coil written down at its spool: one more entry under `trials`, all else in the file as it stands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from sourcing.files.disk import read_raw
from sourcing.files.findings import Finding, Place, WrongWords
from sourcing.files.replacing import change_file
from sourcing.stock.model import Catalogue, Spool

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


def write_trial(catalogue: Catalogue, spool: Spool, given: Mapping[str, str], dry_run: bool = False) -> Tried:
    """Write a trial, as keys and texts, at the end of its spool's; `dry_run` leaves the file as it is.

    Raises `WrongWords` with all that is wrong with the trial, `Mistakes` where the file cannot be changed.
    """
    file = spool.place.file or ""
    if len(given.keys() & _DIAMETERS.keys()) != 1:
        found = "both --outside and --inside" if given.keys() >= _DIAMETERS.keys() else "neither --outside nor --inside"
        raise WrongWords((Finding(Place(None), found, "one diameter of the coil: the other follows"),))
    trial = {key: given[key] for key in KEYS if key in given}

    def change(raw: bytes) -> Tried:
        from sourcing.files.splicing import source_of, with_inner_entry

        source = source_of(raw, file)
        number = source.number_of("spools", spool.id)
        edited = with_inner_entry(source, "spools", number, "trials", trial)
        written = _read_back(edited.raw, file, catalogue, number, trial)
        return Tried(written, file, edited.line, edited.changed, edited.raw)

    return change(read_raw(file)) if dry_run else change_file(file, change)


def _read_back(raw: bytes, file: str, catalogue: Catalogue, number: int, trial: Mapping[str, str]) -> Spool:
    """The spool of that number as the reader takes it. Raises `WrongWords` where he finds its new trial wrong."""
    from sourcing.files.splicing import source_of
    from sourcing.need.kinds import settled
    from sourcing.stock.spools import spools_in

    source = source_of(raw, file)
    bench = catalogue.bench
    read = spools_in(source.document, settled(catalogue.materials, bench.currency), bench.units)
    if read.findings:
        spool = source.records("spools")[number]
        trials = spool["trials"] if isinstance(spool, dict) else None
        last = trials[-1] if isinstance(trials, list) else None
        keys = {source.document.place(last, key): key for key in trial} if isinstance(last, dict) else {}
        raise WrongWords(tuple(_as_options(read.findings, keys)))
    return read.spools[number]


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
