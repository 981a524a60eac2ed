"""Files of springs: every key, what follows from what, the doubts, and every mistake with its whole message."""

from pathlib import Path

import pytest

from sourcing.files.findings import Finding, Place
from sourcing.quantities import Money
from sourcing.springs.model import Ends, Hand
from sourcing.stock.model import StockSpring
from sourcing.stock.reading import read_springs
from tests.files.told import mistakes_of, told, written

SPRING = {
    "id": "T-17",
    "kind": "compression",
    "wire_diameter": "0.9",
    "outside_diameter": "9.6",
    "free_length": "31",
    "total_coils": "9.75",
    "ends": "closed-ground",
    "material": "music-wire",
}


def springs(*records: dict[str, str]) -> str:
    """A file of springs as it is typed, one key a line: the first key of a spring stands in line 2, column 5."""
    lines = ["springs:"]
    for record in records:
        lines += [
            f"  {'-' if number == 0 else ' '} {key}: {value}" for number, (key, value) in enumerate(record.items())
        ]
    return "\n".join(lines) + "\n"


def one(folder: Path, **changes: str | None) -> tuple[StockSpring, tuple[Finding, ...]]:
    """The spring above with some keys changed, added or (None) taken out; and the doubts about it."""
    (spring,), warnings = read_springs(written(folder, springs(changed(**changes))))
    return spring, warnings


def changed(**changes: str | None) -> dict[str, str]:
    return {key: value for key, value in {**SPRING, **changes}.items() if value is not None}


def mistakes(folder: Path, *records: dict[str, str]) -> list[str]:
    return told(mistakes_of(read_springs, written(folder, springs(*records))))


def test_all_keys_of_a_spring(tmp_path: Path) -> None:
    text = """
        springs:
          - id: T-17
            kind: compression
            wire_diameter: 0.9
            outside_diameter: 9.6      # or mean_diameter or inside_diameter: exactly one
            free_length: 31
            total_coils: 9.75
            ends: closed-ground
            material: music-wire
            hand: right
            rate: 1.31 N/mm
            grade: 2
            shear_modulus: 79 GPa
            elastic_modulus: 200 GPa
            tensile_strength: 2000
            on_hand: 3
            least: 2
            place: drawer B4
            seller: Alder Row stock list
            price: 0.42 EUR
            pack: 10
            lead_days: 4
            note: bought for the copy shop
    """
    path = written(tmp_path, text)
    (stock,), warnings = read_springs(path)
    assert not warnings
    assert (stock.id, stock.on_hand, stock.least, stock.shelf) == ("T-17", 3, 2, "drawer B4")
    assert (stock.seller, stock.price, stock.pack) == ("Alder Row stock list", Money(0.42, "EUR"), 10)
    assert (stock.lead_days, stock.note, stock.grade) == (4, "bought for the copy shop", 2)
    assert stock.stated_rate == 1.31
    assert stock.place == Place(str(path), 2, 5)
    spring = stock.spring
    assert (spring.wire_diameter_mm, spring.mean_diameter_mm, spring.free_length_mm) == (0.9, pytest.approx(8.7), 31)
    assert (spring.active_coils, spring.total_coils, spring.ends) == (7.75, 9.75, Ends.CLOSED_GROUND)
    assert (spring.shear_modulus_mpa, spring.elastic_modulus_mpa, spring.tensile_strength_mpa) == (79000, 200000, 2000)
    assert (spring.material.name, spring.hand) == ("music-wire", Hand.RIGHT)


def test_what_is_absent_has_its_default(tmp_path: Path) -> None:
    stock, _ = one(tmp_path)
    assert (stock.on_hand, stock.pack, stock.least, stock.price, stock.lead_days) == (0, 1, None, None, None)
    assert (stock.stated_rate, stock.grade, stock.spring.hand) == (None, None, None)
    assert stock.spring.shear_modulus_mpa == stock.spring.material.shear_modulus_mpa
    assert stock.spring.tensile_strength_mpa == 2270  # EN 10270-1 SH, wire of 0.90 mm


def test_an_id_is_a_text(tmp_path: Path) -> None:
    assert one(tmp_path, id="010")[0].id == "010"


@pytest.mark.parametrize(
    "diameter", [{"outside_diameter": "9.6"}, {"mean_diameter": "8.7"}, {"inside_diameter": "7.8"}]
)
def test_the_diameter_may_be_measured_outside_inside_or_taken_as_the_mean(
    tmp_path: Path, diameter: dict[str, str]
) -> None:
    changes: dict[str, str | None] = {"outside_diameter": None, **diameter}
    assert one(tmp_path, **changes)[0].spring.mean_diameter_mm == pytest.approx(8.7)


@pytest.mark.parametrize(("ends", "dead"), [("open", 0), ("open-ground", 1), ("closed", 2), ("closed-ground", 2)])
def test_one_number_of_coils_gives_the_other_by_the_dead_coils_of_the_ends(
    tmp_path: Path, ends: str, dead: int
) -> None:
    from_total = one(tmp_path, ends=ends)[0].spring
    assert (from_total.total_coils, from_total.active_coils) == (9.75, 9.75 - dead)
    from_active = one(tmp_path, ends=ends, total_coils=None, active_coils="7.5")[0].spring
    assert (from_active.total_coils, from_active.active_coils) == (7.5 + dead, 7.5)


def test_both_numbers_of_coils_hold_where_the_ends_are_odd(tmp_path: Path) -> None:
    spring = one(tmp_path, active_coils="8.25")[0].spring
    assert (spring.total_coils, spring.active_coils) == (9.75, 8.25)


def test_a_wire_may_be_a_gauge_number_and_a_length_a_fraction(tmp_path: Path) -> None:
    spring = one(tmp_path, wire_diameter="MWG 16", free_length="1 1/4 in")[0].spring
    assert (spring.wire_diameter_mm, spring.free_length_mm) == (pytest.approx(0.94, abs=0.001), 31.75)


def test_a_rate_far_from_that_of_the_dimensions_is_a_doubt_and_no_mistake(tmp_path: Path) -> None:
    _, warnings = one(tmp_path, rate="2 N/mm")
    assert told(warnings) == [
        "10:11: a stated rate of 2.00 N/mm; expected about the 1.31 N/mm that follows from the dimensions; "
        "the seller's figure may be right and a dimension wrong"
    ]


@pytest.mark.parametrize(("rate", "doubts"), [("1.12", 0), ("1.11", 1), ("1.50", 0), ("1.51", 1)])
def test_a_rate_is_doubted_from_15_percent_on(tmp_path: Path, rate: str, doubts: int) -> None:
    """The dimensions give 81500 · 0.9^4 / (8 · 8.7^3 · 7.75) = 1.3097 N/mm (EN 13906-1); 85 % 1.113, 115 % 1.506."""
    assert len(one(tmp_path, rate=rate)[1]) == doubts


ONE_KEY = {
    "a comma": (
        {"wire_diameter": "0,9"},
        "4:20: 0,9 has a comma as decimal sign; expected a decimal point; did you mean 0.9?",
    ),
    "a wire of zero": ({"wire_diameter": "0"}, "4:20: 0 is zero; expected a wire diameter above zero"),
    "a negative coil": ({"outside_diameter": "-9.6"}, "5:23: -9.6 is negative; expected a length above zero"),
    "no room inside": (
        {"outside_diameter": "1.8 mm"},
        "5:23: 1.8 mm leaves no room inside the coil; expected more than twice the wire diameter, 1.80 mm",
    ),
    "no room inside the mean": (
        {"outside_diameter": None, "mean_diameter": "0.9"},
        "9:20: 0.9 leaves no room inside the coil; expected more than the wire diameter, 0.90 mm",
    ),
    "two diameters": (
        {"inside_diameter": "7.8"},
        "10:5: inside_diameter, where outside_diameter stands on line 5 already; "
        "expected one diameter only: the others follow from it and the wire",
    ),
    "no diameter": (
        {"outside_diameter": None},
        "2:5: no diameter of the coil; expected exactly one of outside_diameter, mean_diameter, inside_diameter",
    ),
    "no coils": (
        {"total_coils": None},
        "2:5: no number of coils; expected total_coils or active_coils, or both where the ends are odd",
    ),
    "coils of zero": ({"total_coils": "0"}, "7:18: 0 is zero; expected a number above zero"),
    "dead coils only": (
        {"total_coils": "2"},
        "7:18: 2 coils, of which 2 at closed-ground ends do not act; expected more than 2 coils",
    ),
    "more active coils than coils": (
        {"active_coils": "10"},
        "10:19: 10 active coils of 9.75 in all; expected no more active coils than there are in all",
    ),
    "a spring that is solid at rest": (
        {"free_length": "8.5 mm"},
        "6:18: 8.5 mm is no longer than the spring pressed solid; "
        "expected a free length above the solid length, 8.78 mm",
    ),
    "a tolerance in stock": ({"free_length": "31 ± 1"}, None),
    "a list of lengths": ({"free_length": "[31, 32]"}, "6:18: a list stands here; expected a length, as in 24 mm"),
    "a force as a length": (
        {"free_length": "5 N"},
        "6:18: 5 N is a force; expected a length (mm, cm, m, in, ft, thou)",
    ),
    "no kind of ends": (
        {"ends": "closed ground"},
        "8:11: “closed ground” is no kind of ends; expected open, open-ground, closed or closed-ground; "
        "did you mean closed-ground?",
    ),
    "a key nobody knows": (
        {"outer_diameter": "9.6"},
        "10:5: “outer_diameter” is no key of a compression spring; expected one of its keys; "
        "did you mean outside_diameter or wire_diameter or mean_diameter?",
    ),
    "a key of a cone": (
        {"outside_diameter_small": "5"},
        "10:5: outside_diameter_small belongs to a conical spring; "
        "expected a key of this kind of spring, or another kind",
    ),
    "no such grade": ({"grade": "4"}, "10:12: “4” is no grade of tolerance; expected 1, 2 or 3"),
    "a rate of zero": ({"rate": "0"}, "10:11: 0 is zero; expected a rate above zero"),
    "part of a spring on hand": ({"on_hand": "1.5"}, "10:14: 1.5 is not whole; expected a whole number"),
    "less than none on hand": ({"on_hand": "-1"}, "10:14: -1 is less than 0; expected a whole number, 0 or more"),
    "an empty pack": ({"pack": "0"}, "10:11: 0 is less than 1; expected a whole number, 1 or more"),
    "a negative price": ({"price": "-1 EUR"}, "10:12: -1 EUR is negative; expected an amount of zero or above"),
    "days gone by": ({"lead_days": "-1"}, "10:16: -1 is negative; expected a time of zero or above"),
    "no id": ({"id": "''"}, "2:9: nothing stands here; expected a text"),
    "no material": (
        {"material": None},
        "2:5: no material; expected the key material with a material, as in music-wire",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("changes", "message"), ONE_KEY.values(), ids=ONE_KEY)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, changes: dict[str, str | None], message: str | None) -> None:
    said = mistakes(tmp_path, changed(**changes))
    assert len(said) == 1
    assert message is None or said == [message]


def test_keys_that_a_spring_must_have_are_told_together(tmp_path: Path) -> None:
    assert mistakes(tmp_path, {"id": "A", "kind": "compression"}) == [
        "2:5: no wire_diameter, material, free_length or ends; expected all of these keys in a compression spring",
        "2:5: no diameter of the coil; expected exactly one of outside_diameter, mean_diameter, inside_diameter",
        "2:5: no number of coils; expected total_coils or active_coils, or both where the ends are odd",
    ]


def test_figures_are_compared_though_other_keys_are_wrong(tmp_path: Path) -> None:
    said = mistakes(tmp_path, changed(price="free", zzz="1", outside_diameter="1"))
    assert [line.split(" ")[0] for line in said] == ["5:23:", "10:12:", "11:5:"]


def test_the_mistakes_of_all_springs_are_told(tmp_path: Path) -> None:
    said = mistakes(tmp_path, changed(id="A", ends="x"), changed(id="B"), changed(id="C", grade="x"))
    assert [line.split(" ")[0] for line in said] == ["8:11:", "26:12:"]


def test_two_springs_with_one_id_are_told_once_with_both_places(tmp_path: Path) -> None:
    path = tmp_path / "file.yaml"
    assert mistakes(tmp_path, changed(), changed()) == [
        f"10:9: “T-17” is the id of another spring, at {path}:2:9; expected an id of its own"
    ]


def test_a_kind_nobody_knows_is_told_with_the_nearest(tmp_path: Path) -> None:
    assert mistakes(tmp_path, changed(kind="tension", ends=None, hooks="full-loop")) == [
        "3:11: “tension” is no kind of spring; expected compression, conical, extension or torsion; "
        "did you mean extension?"
    ]


KEYS = "expected springs: and under it a list of springs"


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("- id: A\n", f"1:1: a list stands here; {KEYS}"),
        ("# later\n", f"nothing but comments; {KEYS}"),
        ("spring:\n  - id: A\n", f"1:1: the key “spring”; {KEYS}; did you mean springs?"),
        ("spools:\n  - id: A\n", f"1:1: the key “spools”; {KEYS}"),
        ("springs: T-17\n", "1:10: “T-17” stands here; expected a list of springs"),
        ("springs:\n", "1:9: nothing after springs:; expected a value, or the line left out"),
    ],
)
def test_another_file_is_no_file_of_springs(tmp_path: Path, text: str, message: str) -> None:
    assert told(mistakes_of(read_springs, written(tmp_path, text))) == [message]


def test_a_spring_is_keys_and_values(tmp_path: Path) -> None:
    (said,) = told(mistakes_of(read_springs, written(tmp_path, "springs: [T-17]\n")))
    assert said.startswith(
        "1:11: “T-17” stands here; expected the keys of a compression spring with their values: "
        "id, kind, wire_diameter, material, free_length, ends, "
    )


def test_an_empty_list_of_springs_is_a_list(tmp_path: Path) -> None:
    assert read_springs(written(tmp_path, "springs: []\n")) == ((), ())
