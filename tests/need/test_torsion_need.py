"""A need of a torsion spring: angles wound up from free, torques, legs, width, hand, and every mistake in them."""

from pathlib import Path

import pytest

from sourcing.files.findings import Place
from sourcing.need.model import Need, Pocket, TurnedPoint, WantedLeg
from sourcing.need.reading import read_need
from sourcing.quantities import Wanted
from sourcing.springs.model import Hand, LegShape
from tests.files.told import mistakes_of, told, written

HEAD = "job: x\nkind: torsion\n"
AN_ANGLE = "an angle (deg, rad, turns)"


def need_with(folder: Path, line: str) -> Need:
    return read_need(written(folder, f"{HEAD}{line}\n"))


def mistakes(folder: Path, line: str) -> list[str]:
    return told(mistakes_of(read_need, written(folder, f"{HEAD}{line}\nfree_angle: 90\n")))


def test_a_need_of_a_torsion_spring_is_read(tmp_path: Path) -> None:
    path = written(
        tmp_path,
        """
        job: latch
        kind: torsion
        hand: right
        pocket: {rod: 8 mm, bore: 20 mm, width: 12 mm}
        working:
          - {angle: 60 deg, torque: 260 N*mm ± 20 %}
          - {angle: 30 deg ± 2 deg}
        leg_1: 25 mm
        leg_2: {length: 20 mm ± 1 mm, shape: hooked}
        free_angle: 270 deg ± 10 deg
        """,
    )
    need = read_need(path)
    assert need.pocket == Pocket(Wanted(nominal=20), Wanted(nominal=8), width_mm=Wanted(nominal=12))
    assert need.turned == (
        TurnedPoint(Wanted(nominal=30, minus=2, plus=2)),
        TurnedPoint(Wanted(nominal=60), Wanted(nominal=260, minus=52, plus=52, percent=True)),
    )
    assert (need.hand, need.working, need.bodies) == (Hand.RIGHT, (), None)
    assert need.leg_1 == WantedLeg(Wanted(nominal=25))
    assert need.leg_2 == WantedLeg(Wanted(nominal=20, minus=1, plus=1), LegShape.HOOKED)
    assert need.free_angle_deg == Wanted(nominal=270, minus=10, plus=10)
    assert need.places["working.1.torque"] == Place(str(path), 6, 29)


def test_an_angle_may_be_in_turns_or_radians_and_a_torque_in_inches(tmp_path: Path) -> None:
    need = need_with(tmp_path, "working: [{angle: 1/4 turn, torque: 2 lbf*in}]")
    assert need.turned[0].at_deg == pytest.approx(90)
    assert need.turned[0].torque_n_mm is not None
    assert need.turned[0].torque_n_mm.nominal == pytest.approx(225.97, abs=0.01)


def test_two_bodies_are_asked_for_with_bodies(tmp_path: Path) -> None:
    assert need_with(tmp_path, "pocket: {rod: 8}\nbodies: 2").bodies == 2


ONE_LINE = {
    "a load against the hand": (
        "working: [{angle: -30 deg}]",
        "3:19: -30 deg would unwind the spring, loaded against its hand; expected an angle wound up from free, above "
        "zero; what turns the other way wants a spring of the other hand",
    ),
    "no angle at all": ("working: [{angle: 0 deg}]", "3:19: 0 deg is zero; expected an angle above zero"),
    "a length as an angle": ("working: [{angle: 24 mm}]", f"3:19: 24 mm is a length; expected {AN_ANGLE}"),
    "a range of angles": (
        "working: [{angle: 20..30 deg}]",
        "3:19: 20..30 deg is no one angle; expected the angle at which the torque is wanted, as in 60 deg ± 3 deg",
    ),
    "a length where an angle belongs": (
        "working: [{length: 24 mm, force: 9 N}]",
        "3:11: no angle; expected the key angle with an angle, as in 60 deg",
    ),
    "a torque that falls": (
        "working: [{angle: 30, torque: 200}, {angle: 60, torque: 100 N*mm}]",
        "3:57: 100 N*mm at 60, but 200 at 30; expected a torque that rises as a torsion spring is wound up",
    ),
    "two points of one angle": (
        "working: [{angle: 90 deg}, {angle: 1/4 turn}]",
        "3:36: 1/4 turn is the angle of the working point on line 3; expected another angle at each working point",
    ),
    "no working point": (
        "working: []",
        "3:10: an empty list; expected a working point, as in  - {angle: 60 deg, torque: 280 N*mm}",
    ),
    "a leg of zero": ("leg_1: 0", "3:8: 0 is zero; expected a length above zero"),
    "a leg without its length": (
        "leg_1: {shape: hooked}",
        "3:8: no length; expected the key length with a length, as in 31 mm ± 2 mm",
    ),
    "no shape of a leg": (
        "leg_1: {length: 20, shape: hook}",
        "3:28: “hook” is no shape of a leg; expected straight, hooked or offset; did you mean hooked?",
    ),
    "a list as a leg": (
        "leg_1: [20, hooked]",
        "3:8: a list stands here; expected the keys of a leg with their values: length, shape",
    ),
    "a key of a leg nobody knows": (
        "leg_2: {lenght: 20, length: 20}",
        "3:9: “lenght” is no key of a leg; expected one of its keys; did you mean length?",
    ),
    "an empty pocket": ("pocket: {}", "3:9: an empty pocket; expected at least one of rod, bore and width"),
    "a rod as thick as the bore": (
        "pocket: {rod: 9 mm, bore: 9 mm}",
        "3:15: a rod of 9 mm in a bore of 9 mm; expected a rod thinner than the bore",
    ),
    "a width with an upper bound only": (
        "pocket: {width: <= 9 mm}",
        "3:17: <= 9 mm says nothing of how narrow the room can be; expected the width, or the least it can be: that is "
        'what the body must go into, wound up; did you mean ">= 9 mm"?',
    ),
    "a depth": (
        "pocket: {depth: 9 mm}",
        "3:10: depth belongs to a compression spring; expected a key of this kind of spring, or another kind",
    ),
    "three bodies": ("bodies: 3", "3:9: “3” is no number of bodies; expected 1 or 2"),
    "the hand of a double": (
        "hand: left\nbodies: 2",
        "3:7: hand: left of a double torsion spring; expected no hand: its two bodies have both",
    ),
}


@pytest.mark.parametrize(("line", "message"), ONE_LINE.values(), ids=ONE_LINE)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, line: str, message: str) -> None:
    assert message in mistakes(tmp_path, line)


def test_a_need_must_say_something_of_the_springs_size(tmp_path: Path) -> None:
    assert told(mistakes_of(read_need, written(tmp_path, f"{HEAD}hand: left\n"))) == [
        "1:1: nothing of the spring's size; expected at least one of working, pocket and free_angle"
    ]


@pytest.mark.parametrize("key", ["leg_1: 20", "free_angle: 90", "bodies: 2"])
def test_the_keys_of_a_torsion_spring_belong_to_no_compression_spring(tmp_path: Path, key: str) -> None:
    text = f"job: x\nkind: compression\n{key}\nfree_length: 31\n"
    (message,) = told(mistakes_of(read_need, written(tmp_path, text)))
    assert "belongs to a torsion spring" in message


@pytest.mark.parametrize(("text", "nominal"), [("0 deg", 0), ("0 deg ± 10 deg", 0), ("1 turn", 360)])
def test_legs_may_stand_at_no_angle_to_each_other(tmp_path: Path, text: str, nominal: float) -> None:
    free = need_with(tmp_path, f"free_angle: {text}").free_angle_deg
    assert free is not None
    assert free.nominal == nominal
