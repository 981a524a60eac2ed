"""Files of spools with their trials."""

from pathlib import Path

import pytest

from sourcing.files.findings import Place
from sourcing.quantities import Money
from sourcing.stock.model import Spool, Trial
from sourcing.stock.places import place_of_inner
from sourcing.stock.reading import inspect_catalogue, read_catalogue
from tests.files.told import mistakes_of, told, written

SPOOL = "spools:\n  - {id: W08, material: music-wire, wire_diameter: 0.8%s}\n"


def spool(folder: Path, more: str = "") -> Spool:
    (found,) = read_catalogue(written(folder, SPOOL % more)).spools
    return found


def mistakes(folder: Path, text: str) -> list[str]:
    return told(mistakes_of(read_catalogue, written(folder, text)))


def test_all_keys_of_a_spool_and_of_a_trial(tmp_path: Path) -> None:
    text = """
        spools:
          - id: W08
            material: music-wire
            wire_diameter: 0.8
            length_left: 6.2 m
            price_per_metre: 0.35 EUR
            place: rack 2
            note: greasy
            trials:
              - {date: 2026-03-02, mandrel: 6.0, turns: 4, outside_diameter: 8.9, pitch_wound: 1.2, pitch: 1.25,
                 heated: no, pull: 30 N, on: steel-rod, stop_angle: 90 deg, leg_angle: 1/4 turns,
                 initial_tension: 0.4 kgf}
    """
    path = written(tmp_path, text)
    (found,) = read_catalogue(path).spools
    assert (found.id, found.material.name, found.wire_diameter_mm) == ("W08", "music-wire", 0.8)
    assert (found.length_left_mm, found.price_per_metre) == (6200, Money(0.35, "EUR"))
    assert (found.shelf, found.note, found.place) == ("rack 2", "greasy", Place(str(path), 2, 5))
    assert found.trials == (
        Trial(
            mandrel_mm=6.0,
            outside_diameter_mm=8.9,
            turns=4,
            date="2026-03-02",
            pitch_wound_mm=1.2,
            pitch_mm=1.25,
            heated=False,
            pull_n=30,
            on="steel-rod",
            stop_angle_deg=90,
            leg_angle_deg=90,
            initial_tension_n=pytest.approx(3.923, abs=0.001),
        ),
    )


def test_what_is_absent_is_unknown(tmp_path: Path) -> None:
    found = spool(tmp_path)
    assert (found.length_left_mm, found.price_per_metre, found.shelf, found.trials) == (None, None, None, ())


def test_an_empty_spool_is_a_spool(tmp_path: Path) -> None:
    assert spool(tmp_path, ", length_left: 0").length_left_mm == 0


def test_the_outside_of_a_trial_follows_from_its_inside_and_the_wire(tmp_path: Path) -> None:
    (trial,) = spool(tmp_path, ", trials: [{mandrel: 6, inside_diameter: 7.3, heated: yes, on: printed}]").trials
    assert trial.outside_diameter_mm == pytest.approx(8.9)
    assert (trial.heated, trial.on) == (True, "printed")


TRIAL = {
    "no mandrel": ("outside_diameter: 8.9", "2:66: no mandrel; expected the key mandrel with a length, as in 24 mm"),
    "no diameter": (
        "mandrel: 6",
        "2:66: no diameter of the coil; expected exactly one of outside_diameter and inside_diameter",
    ),
    "two diameters": (
        "mandrel: 6, inside_diameter: 7.3, outside_diameter: 8.9",
        "2:101: outside_diameter, where inside_diameter stands on line 2 already; "
        "expected one diameter only: the other follows",
    ),
    "a coil that is no larger than its mandrel": (
        "mandrel: 9 mm, outside_diameter: 8.9",
        "2:100: 8.9 is less than the mandrel and the wire on it; expected a coil that goes round a mandrel of "
        "9.00 mm: 10.60 mm outside or more (up to 0.06 mm less is let pass: caliper and wire err so much)",
    ),
    "a coil a tenth smaller than its mandrel and two wires": (
        "mandrel: 8, outside_diameter: 9.5",
        "2:97: 9.5 is less than the mandrel and the wire on it; expected a coil that goes round a mandrel of "
        "8.00 mm: 9.60 mm outside or more (up to 0.06 mm less is let pass: caliper and wire err so much)",
    ),
    "a pitch of less than the wire": (
        "mandrel: 6, outside_diameter: 8.9, pitch_wound: 0.5",
        "2:115: a pitch of 0.50 mm, less than the wire; expected from one turn to the next, the wire counted in",
    ),
    "a pull that tears the wire": (
        "mandrel: 6, outside_diameter: 8.9, pull: 1200 N",
        "2:108: a pull of 1200 N, which tears this wire; expected the pull on the wire as it was wound: 348 N at "
        "most, 0.3 of what breaks it (assumed)",
    ),
    "heated or not": (
        "mandrel: 6, outside_diameter: 8.9, heated: maybe",
        "2:110: “maybe” is no answer; expected yes or no",
    ),
    "another mandrel": (
        "mandrel: 6, outside_diameter: 8.9, on: steel",
        "2:106: “steel” is no kind of mandrel; expected steel-rod or printed; did you mean steel-rod?",
    ),
    "a pull of zero": (
        "mandrel: 6, outside_diameter: 8.9, pull: 0 N",
        "2:108: 0 N is zero; expected a force above zero",
    ),
    "turns of zero": ("mandrel: 6, outside_diameter: 8.9, turns: 0", "2:109: 0 is zero; expected a number above zero"),
    "a negative angle": (
        "mandrel: 6, outside_diameter: 8.9, leg_angle: -90 deg",
        "2:113: -90 deg is negative; expected an angle of 0 to 360 deg, counted from leg 1 on to leg 2 the way the "
        "spring is wound up: 270 deg, if that is what you mean",
    ),
    "more than a whole turn": (
        "mandrel: 6, outside_diameter: 8.9, leg_angle: 400",
        "2:113: 400 is more than a whole turn; expected an angle of 0 to 360 deg, counted from leg 1 on to leg 2 the "
        "way the spring is wound up: 40 deg, if that is what you mean",
    ),
    "where the crank stopped, and nothing else": (
        "mandrel: 6, outside_diameter: 8.9, stop_angle: 90",
        "2:114: the angle at which the crank stopped, without leg_angle and turns; expected all three: how far so many "
        "turns opened is the angle at the stop less that of the legs let go",
    ),
    "a key nobody knows": (
        "mandrel: 6, outside_diameter: 8.9, pich: 1",
        "2:102: “pich” is no key of a trial; expected one of its keys; did you mean pitch?",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("trial", "message"), TRIAL.values(), ids=TRIAL)
def test_a_mistake_in_a_trial_is_told_at_its_place(tmp_path: Path, trial: str, message: str) -> None:
    assert mistakes(tmp_path, SPOOL % f", trials: [{{{trial}}}]") == [message]


def test_a_coil_that_reads_a_few_hundredths_too_little_is_within_what_caliper_and_wire_err(tmp_path: Path) -> None:
    """9.6 mm at the least on 8 mm; a caliper errs by 0.05 mm, two wires of 0.8 mm by 2 x 0.015 mm (EN 10270-1)."""
    (trial,) = spool(tmp_path, ", trials: [{mandrel: 8, outside_diameter: 9.55}]").trials
    assert trial.outside_diameter_mm == pytest.approx(9.55)


def test_a_bound_is_told_in_the_units_of_the_bench(tmp_path: Path) -> None:
    (tmp_path / "spools").mkdir()
    (tmp_path / "bench.yaml").write_text("units: inch\n", "utf-8")
    text = SPOOL % ", trials: [{mandrel: 5/16 in, outside_diameter: 0.35 in}]"
    (tmp_path / "spools" / "wire.yaml").write_text(text, "utf-8")
    (mistake,) = inspect_catalogue(tmp_path)[1]
    assert mistake.place.line == 2
    assert "0.35 in is less than the mandrel" in mistake.found
    assert "0.375 in outside or more" in mistake.expected
    assert "mm" not in mistake.expected


def test_a_text_is_no_list_of_trials(tmp_path: Path) -> None:
    assert mistakes(tmp_path, SPOOL % ", trials: two") == [
        "2:65: “two” stands here; expected a list of trials, as in  - {mandrel: 6.0, outside_diameter: 8.9}"
    ]


def test_a_negative_length_left_is_told(tmp_path: Path) -> None:
    assert mistakes(tmp_path, SPOOL % ", length_left: -1 m") == [
        "2:70: -1 m is negative; expected a length of zero or above"
    ]


def test_keys_that_a_spool_must_have_are_told(tmp_path: Path) -> None:
    assert mistakes(tmp_path, "spools:\n  - {id: W08}\n") == [
        "2:5: no material or wire_diameter; expected all of these keys in a spool"
    ]


def test_two_spools_with_one_id_are_told_once_with_both_places(tmp_path: Path) -> None:
    text = SPOOL % "" + "  - {id: W08, material: music-wire, wire_diameter: 1}\n"
    assert mistakes(tmp_path, text) == [
        f"3:10: “W08” is the id of another spool, at {tmp_path / 'file.yaml'}:2:10; expected an id of its own"
    ]


def test_the_place_of_a_trial_is_that_of_the_file_as_it_stands(tmp_path: Path) -> None:
    def last_place(more: str) -> Place:
        found = spool(tmp_path, more)
        return place_of_inner(found.place, "trials", len(found.trials) - 1)

    one = "{mandrel: 6, outside_diameter: 8.9}"
    before, after = last_place(f", trials: [{one}]"), last_place(f", trials: [{one}, {one}]")
    assert (before.line, after.line) == (2, 2)
    assert (after.column or 0) - (before.column or 0) == len(f"{one}, ")
