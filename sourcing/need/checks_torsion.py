"""Whether the figures of a need of a torsion spring agree with each other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.need.checks_common import empty_pocket, is_above, rod_in_bore, says_something
from sourcing.need.records import TorsionNeed, TurnedRecord

NeedRead = Read[TorsionNeed]


def findings(need: NeedRead) -> list[Finding]:
    """All that does not agree in a need."""
    checks = (_says_something, _pocket, _hand_of_a_double, _angles_differ, _torques_rise)
    return [finding for check in checks for finding in check(need)]


def _says_something(need: NeedRead) -> Iterator[Finding]:
    yield from says_something(need, ("working", "pocket", "free_angle"), "{angle: 60 deg, torque: 280 N*mm}")


def _pocket(need: NeedRead) -> Iterator[Finding]:
    yield from empty_pocket(need, "rod, bore and width")
    yield from rod_in_bore(need)


def _hand_of_a_double(need: NeedRead) -> Iterator[Finding]:
    if need.record.bodies == 2 and need.record.hand is not None:
        found = f"hand: {need.text('hand')} of a double torsion spring"
        yield Finding(need.place("hand"), found, "no hand: its two bodies have both")


def _angles_differ(need: NeedRead) -> Iterator[Finding]:
    for (first, one), (second, other) in combinations(_points(need), 2):
        if one.angle and other.angle and one.angle.nominal == other.angle.nominal:
            line = need.place("working", first, "angle").line
            found = f"{need.text('working', second, 'angle')} is the angle of the working point on line {line}"
            yield Finding(need.place("working", second, "angle"), found, "another angle at each working point")


def _torques_rise(need: NeedRead) -> Iterator[Finding]:
    points = sorted((each for each in _points(need) if _angle(each[1])), key=lambda numbered: _angle(numbered[1]))
    for (smaller, one), (larger, other) in combinations(points, 2):
        if one.torque and other.torque and _angle(one) < _angle(other) and is_above(one.torque, other.torque):
            yield Finding(
                need.place("working", larger, "torque"),
                f"{_torque_at(need, larger)}, but {_torque_at(need, smaller)}",
                "a torque that rises as a torsion spring is wound up",
            )


def _torque_at(need: NeedRead, number: int) -> str:
    return f"{need.text('working', number, 'torque')} at {need.text('working', number, 'angle')}"


def _points(need: NeedRead) -> list[tuple[int, TurnedRecord]]:
    return [(number, point) for number, point in enumerate(need.record.working or ()) if point is not None]


def _angle(point: TurnedRecord) -> float:
    return (point.angle and point.angle.nominal) or 0.0
