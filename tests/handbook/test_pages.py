"""The handbook: pages that a terminal can show, for every command, with what they promise."""

from __future__ import annotations

import re

import pytest
from typer.main import get_command

from sourcing.cli.app import app
from sourcing.handbook import Page, page_of, pages
from sourcing.handbook.formulas import all_formulas
from sourcing.need.kinds import KINDS
from sourcing.need.records import RECORD_OF, CompressionNeed
from sourcing.tables import rows

PAGES = pages()


def text_of(topic: str) -> str:
    page = page_of(topic)
    assert page is not None
    return "\n".join(page.lines())


def flat(topic: str) -> str:
    """A page without its line breaks."""
    return " ".join(text_of(topic).split())


def commands() -> list[tuple[str, ...]]:
    """Every command as it is typed, those of a group with its name before them."""
    found: list[tuple[str, ...]] = []
    for name, command in get_command(app).commands.items():  # type: ignore[attr-defined]
        inner = getattr(command, "commands", None)
        found += [(name,)] if inner is None else [(name, each) for each in inner]
    return found


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.topic)
def test_a_page_has_a_title_and_lines_of_at_most_eighty_columns(page: Page) -> None:
    lines = list(page.lines())
    assert lines[0] == page.title
    assert len(lines) > 15
    assert [line for line in lines if len(line) > 80] == []


@pytest.mark.parametrize("words", commands(), ids=" ".join)
def test_every_command_has_help_with_an_example(words: tuple[str, ...], run) -> None:
    shown = run(*words, "--help").out
    assert f"Example: springwright {' '.join(words)}" in shown


def test_every_command_is_spoken_of_on_a_page() -> None:
    every = "\n".join(flat(page.topic) for page in PAGES)
    assert [words for words in commands() if f"springwright {words[0]}" not in every] == []


def test_the_page_of_needs_names_every_key() -> None:
    page = text_of("needs")
    for kind in KINDS:
        for key in RECORD_OF.get(kind, CompressionNeed).model_fields:
            assert re.search(rf"\b{key}\b", page), key


def test_the_page_of_formulas_has_every_formula_with_its_source() -> None:
    page = flat("formulas")
    for record in all_formulas():
        assert " ".join(record.written.split()) in page
        assert " ".join(record.cited.split()) in page


def test_the_page_of_checks_has_every_published_figure_and_marks_those_from_memory() -> None:
    page = text_of("checks")
    every = list(rows("checks"))
    recalled = sum(row["read"].startswith("memory") for row in every)
    assert sum(line.endswith(" memory") for line in page.split("\n")) == recalled
    assert f"{len(every)} figures" in page
    assert {row["source"].casefold() for row in every} == {
        source for row in every if (source := row["source"].casefold()) in flat("checks").casefold()
    }


def test_the_page_of_materials_tells_choice_reason_and_spread() -> None:
    page = flat("materials")
    assert "shear modulus: 81500 MPa (EN 10270-1 as reprinted in a DIN handbook" in page
    assert "sources: 80000 to 82700; handbooks give ASTM A228 82700 to 80000 from thin to thick" in page


def test_hand_written_pages_have_one_sentence_a_line() -> None:
    from pathlib import Path

    import sourcing.handbook

    for file in Path(sourcing.handbook.__file__).parent.glob("*.md"):
        for line in file.read_text("utf-8").split("\n"):
            assert not re.search(r"[.!?] [A-Z`]", line), (file.name, line)
