"""Findings: their order, and how names from files are made safe to print."""

from sourcing.files.findings import Finding, Place, in_order, shortened, shown


def test_findings_stand_in_the_order_of_files_lines_and_columns_and_each_once() -> None:
    places = [Place("b", 1, 1), Place("a", 10, 2), Place("a", 2, 9), Place("a", 2, 1), Place("a"), Place("a", 2, 9)]
    assert [finding.place for finding in in_order([Finding(place, "", "") for place in places])] == [
        Place("a"),
        Place("a", 2, 1),
        Place("a", 2, 9),
        Place("a", 10, 2),
        Place("b", 1, 1),
    ]


def test_two_mistakes_at_one_place_stay_in_the_order_they_were_found() -> None:
    place = Place("a", 1, 1)
    assert [f.found for f in in_order([Finding(place, "z", "")], [Finding(place, "a", "")])] == ["z", "a"]


def test_what_a_terminal_would_obey_is_shown() -> None:
    assert shown("\x1b[2J\x07\r\n\t\x7f\x9b") == r"\x1b[2J\x07\r\n\t\x7f\x9b"


def test_marks_that_turn_the_direction_of_writing_are_shown() -> None:
    assert shown("a\u202eb\u2066c\u200b") == r"a\u202eb\u2066c\u200b"


def test_hidden_line_breaks_and_halves_of_characters_are_shown() -> None:
    assert shown("a\u2028b\x85c\ud800") == r"a\u2028b\x85c\ud800"


def test_letters_and_signs_of_every_script_stay() -> None:
    assert shown("Schraubenfächer Ø5 µm ± 懐 🙂") == "Schraubenfächer Ø5 µm ± 懐 🙂"


def test_a_long_text_is_cut() -> None:
    assert shortened("x" * 100) == "x" * 59 + "…"
