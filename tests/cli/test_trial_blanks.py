"""The blanks for trial coils on a winding page: they ask what `springwright trial` takes, and its command takes it."""

from __future__ import annotations

import re
import shlex
from html import unescape

import pytest
import typer.main

from sourcing.cli.app import app
from tests.cli.test_winding_page import KINDS

ASKED_OF_ALL = {
    "mandrel": "mandrel",
    "on steel or printed": "on",
    "turns": "turns",
    "outside": "outside",
    "heated": "heated",
    "pull": "pull",
}
ASKED = {
    "compression": ASKED_OF_ALL | {"pitch wound": "pitch_wound", "pitch": "pitch"},
    "conical": {("end, its mandrel" if words == "mandrel" else words): option
                for words, option in ASKED_OF_ALL.items()},
    "extension": ASKED_OF_ALL | {"force that parts the coils": "tension"},
    "torsion": ASKED_OF_ALL | {"crank stopped at, deg": "stop_angle", "legs came out at, deg": "leg_angle"},
}  # fmt: skip
"""The words over each blank of a page, and the parameter of the command that they ask for."""

NOT_MEASURED = {"spool", "date", "take_back", "dry_run", "catalog", "as_json"}
INSTEAD = {"inside"}
"""Asked for in place of the outside."""

MEASURED = {
    "--turns": "4", "--outside": "8.9 mm", "--mandrel": "6 mm", "--pitch-wound": "1.2 mm", "--pitch": "1.25 mm",
    "--pull": "30 N", "--tension": "1.5 N", "--stop-angle": "90", "--leg-angle": "20",
}  # fmt: skip


def page_of(kind, run, bench_folder, units="mm", *more):
    if KINDS[kind]:
        (bench_folder / "need.yaml").write_text(KINDS[kind], "utf-8")
    (bench_folder / "catalog" / "bench.yaml").write_text(f"units: {units}\n", "utf-8")
    assert run("wind", "need.yaml", "--wire", "W08", *more, "--sheet", "out.html").status == 0
    return unescape((bench_folder / "out.html").read_text("utf-8")).partition("Write down each coil")[2]


def command_of(after):
    """As it is typed; its options are marked on the page as what is not broken off."""
    typed = re.search(r"<code>(springwright trial .*?)</code>", after)[1]
    assert '<span class="whole">--mandrel</span>' in typed
    return re.sub(r"<[^>]+>", "", typed)


@pytest.mark.parametrize("kind", KINDS)
def test_the_blanks_are_those_of_the_kind_and_three_rows_are_left_for_them(kind, run, bench_folder):
    after = page_of(kind, run, bench_folder)
    table = after[: after.index("</table>")]
    heads = re.findall('<th scope="col">(.*?)</th>', table)
    assert heads[0] == "trial"
    assert set(heads[1:]) == set(ASKED[kind])
    rows = re.findall(r"<tr>(.*?)</tr>", table.partition("<tbody>")[2])
    assert [re.search('<th scope="row">(.*?)</th>', row)[1] for row in rows] == ["1", "2", "3"]
    assert all(row.count('class="blank"') == len(heads) - 1 for row in rows)


def test_the_kinds_together_ask_for_all_that_the_command_takes_of_a_coil():
    taken = {each.name for each in typer.main.get_command(app).commands["trial"].params}
    asked = {option for kind in ASKED.values() for option in kind.values()}
    assert asked == taken - NOT_MEASURED - INSTEAD


@pytest.mark.parametrize("units", ["mm", "inch"])
@pytest.mark.parametrize("kind", KINDS)
def test_the_command_below_names_an_option_for_each_blank_and_takes_what_is_written_there(
    kind, units, run, bench_folder
):
    words = shlex.split(command_of(page_of(kind, run, bench_folder, units)))
    assert words[:3] == ["springwright", "trial", "W08"]
    options, values = words[3::2], words[4::2]
    taken = {each.opts[0]: each.name for each in typer.main.get_command(app).commands["trial"].params}
    assert {taken[each] for each in options} == set(ASKED[kind].values())
    assert len(options) == len(set(options))
    filled = [MEASURED[option] if "..." in value else value for option, value in zip(options, values, strict=True)]
    given = [word for pair in zip(options, filled, strict=True) for word in pair]
    ran = run("trial", "W08", *given, "--json")
    assert ran.status == 0, ran.out


def test_the_command_has_the_mandrel_of_the_sheet_and_an_inch_bench_is_told_what_a_bare_figure_means(run, bench_folder):
    found = {units: page_of("compression", run, bench_folder, units, "--mandrel", "6 mm") for units in ("mm", "inch")}
    mm, inch = (command_of(found[units]) for units in ("mm", "inch"))
    assert "--mandrel '6 mm' --on steel-rod --turns ... --outside ... " in mm
    assert "--mandrel '0.23622 in' --on steel-rod --turns ... --outside '... in' " in inch
    assert "--pull ..." in mm
    assert "--pull '... lbf'" in inch
    assert "read as mm" in found["inch"]
    assert "read as mm" not in found["mm"]


def test_a_printed_mandrel_is_written_down_as_printed(run, bench_folder):
    after = page_of("compression", run, bench_folder, "mm", "--solid", "rod.stl")
    assert "--on printed" in command_of(after)
