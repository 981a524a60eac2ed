"""A file of spools made into spools with their trials."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Annotated

from pydantic import Field

from sourcing.files.document import Document
from sourcing.files.fields import (
    Force,
    ForceFromZero,
    LegAngle,
    Length,
    LengthFromZero,
    NumberAboveZero,
    Price,
    Text,
    WireDiameter,
    one_of,
    read_by,
)
from sourcing.files.findings import Finding, Place
from sourcing.files.records import Read, Record, read_record
from sourcing.need.kinds import MaterialField
from sourcing.quantities import show_diameter, show_force
from sourcing.stock.lists import listed
from sourcing.stock.model import Spool, Trial
from sourcing.stock.trial_bounds import (
    GREATEST_PULL,
    LEAST_PITCH,
    LEAST_TURNS,
    MOST_TURNS,
    breaking_force_n,
    greatest_pull_n,
    least_outside_mm,
    measures_too_little,
    reading_error_mm,
)


class TrialRecord(Record):
    """A trial coil as it is written."""

    called = "a trial"

    date: Text = None
    mandrel: Length
    turns: NumberAboveZero = None
    outside_diameter: Length = None
    inside_diameter: Length = None
    stop_angle: LegAngle = None
    leg_angle: LegAngle = None
    initial_tension: ForceFromZero = None
    pitch_wound: Length = None
    pitch: Length = None
    heated: Annotated[
        bool | None, read_by(one_of({"yes": True, "no": False}, "answer")), Field(description="yes or no")
    ] = None
    pull: Force = None
    on: Annotated[
        str | None,
        read_by(one_of({word: word for word in ("steel-rod", "printed")}, "kind of mandrel")),
        Field(description="steel-rod or printed"),
    ] = None


class SpoolRecord(Record):
    """A spool as it is written."""

    called = "a spool"

    id: Text
    material: MaterialField
    wire_diameter: WireDiameter
    length_left: LengthFromZero = None
    price_per_metre: Price = None
    place: Text = None
    note: Text = None
    trials: Annotated[
        list[TrialRecord | None] | None,
        Field(description="a list of trials, as in  - {mandrel: 6.0, outside_diameter: 8.9}"),
    ] = None


@dataclass(slots=True)
class SpoolsRead:
    """What a file of spools holds."""

    spools: list[Spool] = field(default_factory=list[Spool])
    ids: list[tuple[str, Place]] = field(default_factory=list[tuple[str, Place]])
    findings: list[Finding] = field(default_factory=list[Finding])


def spools_in(document: Document, settled: Mapping[str, object], units: str = "mm") -> SpoolsRead:
    """All that a file of spools holds, and all that is wrong with it, bounds told in the bench's units."""
    read = SpoolsRead()
    records, read.findings = listed("spools", document)
    for number, value in enumerate(records):
        place = document.place(records, number)
        record, wrong = read_record(SpoolRecord, value, place, document, settled)
        read.findings += wrong
        if record is None:
            continue
        if record.record.id is not None:
            read.ids.append((record.record.id, record.place("id")))
        more = list(_trial_findings(record, units))
        read.findings += more
        if not wrong and not more and (spool := _made(record.record, place)):
            read.spools.append(spool)
    return read


def _trial_findings(spool: Read[SpoolRecord], units: str) -> Iterator[Finding]:
    for number, trial in enumerate(spool.record.trials or ()):
        if trial is not None:
            yield from _one_diameter(spool, number)
            yield from _round_the_mandrel(spool, number, trial, units)
            yield from _a_wire_apart(spool, number, trial, units)
            yield from _pulled_as_a_coil_is(spool, number, trial, units)
            yield from _turns_that_are_counted(spool, number, trial)
            yield from _turned_back(spool, number, trial)


def _one_diameter(spool: Read[SpoolRecord], number: int) -> Iterator[Finding]:
    written = spool.inner("trials", number)
    given = [key for key in written if key in ("outside_diameter", "inside_diameter")]
    if not given:
        expected = "exactly one of outside_diameter and inside_diameter"
        yield Finding(spool.place("trials", number), "no diameter of the coil", expected)
    if len(given) > 1:
        line = spool.document.key_place(written, given[0]).line
        found = f"{given[1]}, where {given[0]} stands on line {line} already"
        yield Finding(spool.document.key_place(written, given[1]), found, "one diameter only: the other follows")


def _round_the_mandrel(spool: Read[SpoolRecord], number: int, trial: TrialRecord, units: str) -> Iterator[Finding]:
    """A coil has the rod it was wound on inside it; heat may draw it a little together."""
    wire_mm, material, mandrel_mm = spool.record.wire_diameter, spool.record.material, trial.mandrel
    if mandrel_mm is not None and wire_mm is not None and mandrel_mm < wire_mm:
        found = f"a mandrel of {show_diameter(mandrel_mm, units)}, thinner than the wire"
        yield Finding(spool.place("trials", number, "mandrel"), found, "the rod that the coil was wound on")
        return
    outside_mm, heated = _outside_diameter_mm(trial, wire_mm), bool(trial.heated)
    if outside_mm is None or mandrel_mm is None or wire_mm is None or material is None:
        return
    if measures_too_little(outside_mm, mandrel_mm, wire_mm, material, heated):
        key = "outside_diameter" if trial.outside_diameter is not None else "inside_diameter"
        least_mm = least_outside_mm(mandrel_mm, wire_mm, material, heated)
        lengths = (mandrel_mm, least_mm, reading_error_mm(wire_mm, material))
        rod, least, error = (show_diameter(mm, units) for mm in lengths)
        yield Finding(
            spool.place("trials", number, key),
            f"{spool.text('trials', number, key)} is less than the mandrel and the wire on it",
            f"a coil that goes round a mandrel of {rod}: {least} outside or more (up to {error} less is let pass: "
            "caliper and wire err so much)",
        )


def _a_wire_apart(spool: Read[SpoolRecord], number: int, trial: TrialRecord, units: str) -> Iterator[Finding]:
    """Turns lie a wire apart at least, on the mandrel and off it."""
    wire_mm = spool.record.wire_diameter
    for key, pitch_mm in (("pitch_wound", trial.pitch_wound), ("pitch", trial.pitch)):
        if pitch_mm is not None and wire_mm is not None and pitch_mm < LEAST_PITCH * wire_mm:
            found = f"a pitch of {show_diameter(pitch_mm, units)}, less than the wire"
            yield Finding(spool.place("trials", number, key), found, "from one turn to the next, the wire counted in")


def _pulled_as_a_coil_is(spool: Read[SpoolRecord], number: int, trial: TrialRecord, units: str) -> Iterator[Finding]:
    """No coil was wound under a pull that tears its wire, or comes near it."""
    wire_mm, material = spool.record.wire_diameter, spool.record.material
    if trial.pull is None or wire_mm is None or material is None:
        return
    breaking_n, most_n = breaking_force_n(wire_mm, material), greatest_pull_n(wire_mm, material)
    if breaking_n is not None and most_n is not None and trial.pull > most_n:
        share = trial.pull / breaking_n
        does = "tears this wire" if share >= 1.0 else f"is {share:.2f} of what breaks this wire"
        found = f"a pull of {show_force(trial.pull, units)}, which {does}"
        expected = (
            f"the pull on the wire as it was wound: {show_force(most_n, units)} at most, {GREATEST_PULL:g} of what "
            "breaks it (assumed)"
        )
        yield Finding(spool.place("trials", number, "pull"), found, expected)


def _turns_that_are_counted(spool: Read[SpoolRecord], number: int, trial: TrialRecord) -> Iterator[Finding]:
    """A coil is half a turn at least, and no more than anybody counts."""
    if trial.turns is None or LEAST_TURNS <= trial.turns <= MOST_TURNS:
        return
    place, text = spool.place("trials", number, "turns"), spool.text("trials", number, "turns")
    if trial.turns < LEAST_TURNS:
        yield Finding(place, f"{text} turns have no diameter to measure", f"{LEAST_TURNS:g} at least; four teach well")
    else:
        expected = f"the turns that the coil has, {MOST_TURNS:g} at most (assumed)"
        yield Finding(place, f"{text} turns, more than anybody counts", expected)


def _turned_back(spool: Read[SpoolRecord], number: int, trial: TrialRecord) -> Iterator[Finding]:
    """Where the crank stopped says something only beside where the legs came to stand, and the turns between."""
    if trial.stop_angle is None:
        return
    missing = [key for key in ("leg_angle", "turns") if getattr(trial, key) is None]
    if missing:
        found = f"the angle at which the crank stopped, without {' and '.join(missing)}"
        expected = "all three: how far so many turns opened is the angle at the stop less that of the legs let go"
        yield Finding(spool.place("trials", number, "stop_angle"), found, expected)


def _outside_diameter_mm(trial: TrialRecord, wire_diameter_mm: float | None) -> float | None:
    if trial.outside_diameter is not None:
        return trial.outside_diameter
    if trial.inside_diameter is None or wire_diameter_mm is None:
        return None
    return trial.inside_diameter + 2 * wire_diameter_mm


def _made(record: SpoolRecord, place: Place) -> Spool | None:
    if record.id is None or record.material is None or record.wire_diameter is None:
        return None
    trials = [_made_trial(trial, record.wire_diameter) for trial in record.trials or () if trial is not None]
    return Spool(
        id=record.id,
        material=record.material,
        wire_diameter_mm=record.wire_diameter,
        length_left_mm=record.length_left,
        price_per_metre=record.price_per_metre,
        shelf=record.place,
        trials=tuple(trial for trial in trials if trial is not None),
        note=record.note,
        place=place,
    )


def _made_trial(trial: TrialRecord, wire_diameter_mm: float) -> Trial | None:
    outside = _outside_diameter_mm(trial, wire_diameter_mm)
    if outside is None or trial.mandrel is None:
        return None
    return Trial(
        mandrel_mm=trial.mandrel,
        outside_diameter_mm=outside,
        turns=trial.turns,
        date=trial.date,
        pitch_wound_mm=trial.pitch_wound,
        pitch_mm=trial.pitch,
        heated=bool(trial.heated),
        pull_n=trial.pull,
        on=trial.on,
        stop_angle_deg=trial.stop_angle,
        leg_angle_deg=trial.leg_angle,
        initial_tension_n=trial.initial_tension,
    )
