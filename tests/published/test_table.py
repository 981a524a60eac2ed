"""The handbook's table of checks is what the checks give now, in values and rows."""

from __future__ import annotations

from .table import FILE, text


def test_the_table_that_the_program_prints_is_what_the_checks_give_now() -> None:
    """Where this fails after a change that is meant, `python -m tests.published.table` writes the table anew."""
    printed, given = FILE.read_text("utf-8").splitlines(), text().splitlines()
    assert [line for line in printed if line not in set(given)] == []
    assert [line for line in given if line not in set(printed)] == []
    assert printed == given
