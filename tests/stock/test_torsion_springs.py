"""Torsion springs in a file of springs: legs, hand, bodies, a rate by angle, and every mistake with its message."""

from dataclasses import replace
from pathlib import Path

import pytest

from sourcing.files.findings import Finding, Place
from sourcing.springs.model import Hand, Leg, LegShape, TorsionSpring
from sourcing.stock.adding import keys_to_ask, keys_to_offer
from sourcing.stock.doubts import doubts
from sourcing.stock.index.plain import Plain
from sourcing.stock.model import Catalogue
from sourcing.stock.reading import read_springs
from sourcing.stock.words import found_by_words
from tests.files.told import mistakes_of, told, written

ONE = {
    "id": "D-1",
    "kind": "torsion",
    "wire_diameter": "1.5",
    "mean_diameter": "12",
    "total_coils": "5",
    "leg_1": "30 mm",
    "leg_2": "{length: 30 mm, shape: hooked}",
    "free_angle": "90 deg",
    "hand": "right",
    "material": "music-wire",
}


def file_of(*records: dict[str, str]) -> str:
    lines = ["springs:"]
    for record in records:
        lines += [f"  {'-' if at == 0 else ' '} {key}: {value}" for at, (key, value) in enumerate(record.items())]
    return "\n".join(lines) + "\n"


def changed(**changes: str | None) -> dict[str, str]:
    return {key: value for key, value in {**ONE, **changes}.items() if value is not None}


def one(folder: Path, **changes: str | None) -> tuple[TorsionSpring, tuple[Finding, ...]]:
    (stock,), warnings = read_springs(written(folder, file_of(changed(**changes))))
    assert isinstance(stock.spring, TorsionSpring)
    return stock.spring, warnings


def mistakes(folder: Path, **changes: str | None) -> list[str]:
    return told(mistakes_of(read_springs, written(folder, file_of(changed(**changes)))))


def test_a_torsion_spring_is_read_with_its_legs(tmp_path: Path) -> None:
    spring, warnings = one(tmp_path)
    assert not warnings
    assert (spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils) == (1.5, 12.0, 5.0)
    assert (spring.leg_1, spring.leg_2) == (Leg(30.0), Leg(30.0, LegShape.HOOKED))
    assert (spring.free_angle_deg, spring.hand, spring.bodies) == (90.0, Hand.RIGHT, 1)
    assert spring.tensile_strength_mpa == 2090  # EN 10270-1 SH, wire of 1.50 mm


def test_legs_hand_and_angle_may_be_left_out_and_either_number_of_coils_will_do(tmp_path: Path) -> None:
    nothing = dict.fromkeys(("leg_1", "leg_2", "hand", "free_angle", "total_coils"))
    spring, _ = one(tmp_path, **nothing, active_coils="4.5", outside_diameter="13.5", mean_diameter=None)
    assert (spring.leg_1, spring.leg_2, spring.hand, spring.free_angle_deg) == (None, None, None, None)
    assert (spring.active_coils, spring.mean_diameter_mm) == (4.5, 12.0)


def test_a_rate_is_by_angle_and_warned_of_where_the_dimensions_say_another(tmp_path: Path) -> None:
    assert one(tmp_path, rate="4.3 N*mm/deg")[1] == ()
    assert one(tmp_path, rate="246 N*mm/rad")[1] == ()
    (warning,) = one(tmp_path, rate="6 N*mm/deg")[1]
    assert warning.found == "a stated rate of 6.00 N·mm/deg"
    assert warning.expected.startswith("about the 4.29 N·mm/deg that follows from the dimensions")


MISTAKES = {
    "a rate by length": ({"rate": "1.3 N/mm"}, "12:11: 1.3 N/mm is a spring rate; expected a rate by angle"),
    "a free length": ({"free_length": "31"}, "12:5: free_length belongs to a compression spring; expected a key"),
    "ends": ({"ends": "closed"}, "12:5: ends belongs to a compression spring; expected a key"),
    "hooks": ({"hooks": "full-loop"}, "12:5: hooks belongs to an extension spring; expected a key"),
    "a cone's diameter": ({"mean_diameter_small": "9"}, "12:5: mean_diameter_small belongs to a conical spring"),
    "two diameters": ({"outside_diameter": "13.5"}, "12:5: outside_diameter, where mean_diameter stands on line 5"),
    "no coils": ({"total_coils": None}, "2:5: no number of coils"),
    "coils that differ": (
        {"active_coils": "5.5"},
        "12:19: 5.5 active coils of 5 in all; expected one number of coils: all of a body's act",
    ),
    "no room inside": ({"mean_diameter": "1.5"}, "5:20: 1.5 leaves no room inside the coil"),
    "the hand of a double": ({"bodies": "2"}, "10:11: hand: right of a double torsion spring; expected no hand"),
    "a body shorter than its coils": (
        {"body_length": "8"},
        "12:18: 8 is shorter than its coils touching each other; expected a body of 9.00 mm or longer",
    ),
    "a negative angle": ({"free_angle": "-10"}, "9:17: -10 is negative; expected an angle of zero or above"),
    "no leg": ({"leg_1": "none"}, "7:12: “none” is no number"),
}


@pytest.mark.parametrize(("changes", "begins"), MISTAKES.values(), ids=MISTAKES)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, changes: dict[str, str | None], begins: str) -> None:
    found = mistakes(tmp_path, **changes)
    assert any(message.startswith(begins) for message in found), found


def test_a_spring_without_a_hand_is_a_doubt_and_a_double_one_is_none(tmp_path: Path) -> None:
    records = (changed(hand=None), changed(id="D-2", hand=None, bodies="2"), changed(id="D-3"))
    springs, _ = read_springs(written(tmp_path, file_of(*records)))
    (doubt,) = doubts(Catalogue(springs))
    assert doubt.found == "“D-1” has no hand, and so is matched to nothing"
    assert "those of a right-hand spring climb to the right" in doubt.expected


def test_springs_are_found_by_hand_by_leg_and_by_rate(tmp_path: Path) -> None:
    records = (changed(), changed(id="D-2", hand="left", leg_1="14.5 mm"), changed(id="D-3", hand=None, bodies="2"))
    springs, _ = read_springs(written(tmp_path, file_of(*records)))
    catalogue = Catalogue(springs)

    def found(words: str) -> list[str]:
        return [thing.id for thing in found_by_words(words, catalogue)]

    assert found("left") == ["D-2"]
    assert found("14.5") == ["D-2"]
    assert found("double") == ["D-3"]
    assert found("4.3 N*mm/deg") == ["D-1"]
    assert found("4.3 N/mm") == []


def test_a_spring_and_its_legs_come_back_from_the_index_as_they_were(tmp_path: Path) -> None:
    (stock,), _ = read_springs(written(tmp_path, file_of(changed())))
    plain = Plain()
    assert replace(plain.back(plain.of(stock)), place=Place(None)) == replace(stock, place=Place(None))


def test_a_new_torsion_spring_is_asked_for_its_coil_and_offered_hand_and_legs() -> None:
    assert keys_to_ask({"kind": "torsion"}) == ["wire_diameter", "outside_diameter", "total_coils", "material"]
    assert keys_to_offer({"kind": "torsion"}) == ["hand", "leg_1", "leg_2", "free_angle", "on_hand", "place"]
