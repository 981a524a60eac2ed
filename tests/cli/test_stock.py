"""`springwright stock` as a user runs it: questions, changes, mistakes, and files that are not what they should be."""

import io
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from sourcing.files.lock import locked

DRAWER = "catalog/springs/drawer.yaml"
ADD = (
    "stock", "add", "--kind", "compression", "--wire-diameter=1", "--outside-diameter", "12", "--free-length", "40",
    "--total-coils", "9", "--ends", "closed", "--material", "music-wire",
)  # fmt: skip
SUBCOMMANDS = ("list", "find", "low", "take", "put", "add", "check")


@pytest.fixture
def drawer(bench_folder: Path) -> Path:
    return bench_folder / DRAWER


def test_every_subcommand_has_help_with_an_example(run):
    for name in SUBCOMMANDS:
        ran = run("stock", name, "--help")
        assert ran.status == 0
        assert f"Example: springwright stock {name}" in ran.out
        assert "--catalog" in ran.out
        assert "--json" in ran.out


def test_the_help_of_add_names_every_key_of_every_record(run):
    from sourcing.stock.compression import CompressionRecord
    from sourcing.stock.conical import ConicalRecord
    from sourcing.stock.spools import SpoolRecord

    named = {word.strip(":;,.") for word in run("stock", "add", "--help").out.replace("-\n  ", "-").split()}
    for model in (CompressionRecord, ConicalRecord, SpoolRecord):
        for key in model.model_fields:
            option = "--" + re.sub("_(small|large)$", "", key).replace("_", "-")
            assert option in named or key == "trials", option


def test_list_shows_springs_and_spools_in_tables(run, bench_folder):
    assert run("stock", "list").out == (
        "\n1 compression spring\n"
        "  id    wire  outside  length  rate  on hand  place or seller\n"
        "        mm    mm       mm      N/mm\n"
        "  T-17  0.90  9.60     31.0    1.31  3        drawer B4\n"
        "\n1 spool\n"
        "  id   material    wire     left    place\n"
        "  W08  music-wire  0.80 mm  6.20 m  rack 2\n"
    )


def test_a_cone_is_listed_with_both_its_ends_and_found_by_its_name(run, drawer):
    cone = (
        "  - {id: C-1, kind: conical, wire_diameter: 0.8, outside_diameter_small: 8, outside_diameter_large: 14,\n"
        "     free_length: 30, total_coils: 8, ends: closed, material: music-wire}\n"
    )
    drawer.write_text(drawer.read_text("utf-8") + cone, "utf-8")
    assert "  C-1  0.80  8.00 to 14.00  30.0  " in run("stock", "list").out
    assert [spring["id"] for spring in run("stock", "find", "cone", "--json").json["springs"]] == ["C-1"]
    assert [spring["id"] for spring in run("stock", "list", "--outside", "14", "--json").json["springs"]] == ["C-1"]
    assert len(run("stock", "list", "--kind", "conical", "--json").json["springs"][0]["closing"]) > 1


def test_list_takes_quantities_in_every_way_that_a_file_does(run, bench_folder):
    def listed(*words: str) -> int:
        return len(run("stock", "list", "--json", *words).json["springs"])

    assert listed("--outside", "9..10 mm") == listed("--wire", "<= 1/16 in") == listed("--rate", "1.3 N/mm ± 5 %") == 1
    assert listed("--outside", "9.7..10 mm") == listed("--wire", "MWG 20") == listed("--length", ">= 32") == 0
    assert listed("--place", "b4", "--seller", "alder", "--material", "music") == 1


def test_list_in_json_has_the_keys_of_the_record_and_its_figures(run, bench_folder):
    document = run("stock", "list", "--json").json
    (spring,), (spool,) = document["springs"], document["spools"]
    described = run("describe", DRAWER, "--json").json["springs"][0]
    assert {key: value for key, value in described.items() if key != "at"}.items() <= spring.items()
    shelf = {
        "on_hand": 3, "least": None, "place": "drawer B4", "seller": "Alder Row stock list", "pack": 10, "lead_days": 4,
        "price": {"amount": 0.42, "currency": "EUR"}, "stated_rate_n_per_mm": 1.31, "ends": "closed-ground",
        "file": DRAWER, "line": 2,
    }  # fmt: skip
    assert shelf.items() <= spring.items()
    assert (spool["length_left_mm"], spool["wire_diameter_mm"], spool["place"]) == (6200, 0.8, "rack 2")


def test_all_wrong_options_of_list_are_told_with_status_2(run, bench_folder):
    ran = run("stock", "list", "--kind", "compresion", "--wire", "3 N", "--sort", "wires")
    assert ran.status == 2
    assert ran.out == ""
    assert [line.split(";")[0] for line in ran.err.splitlines()] == [
        "--kind: “compresion”", "--sort: “wires”", "--wire: 3 N is a force",
    ]  # fmt: skip


def test_find_takes_words_and_figures(run, bench_folder):
    assert "T-17" in run("stock", "find", "0.9", "drawr", "B4").out
    assert [spool["id"] for spool in run("stock", "find", "0.8 mm rack", "--json").json["spools"]] == ["W08"]
    assert run("stock", "find", "umbrella").out == "Nothing in the catalogue is that.\n"


def test_low_tells_what_is_below_the_least(run, drawer):
    assert run("stock", "low").out == "Nothing is below the least that is wanted.\n"
    drawer.write_text(drawer.read_text("utf-8") + "    least: 5\n", "utf-8")
    assert run("stock", "low").out == (
        "\n1 spring below the least wanted\n"
        "  id    on hand  least  place      seller\n"
        "  T-17  3        5      drawer B4  Alder Row stock list\n"
    )
    document = run("stock", "low", "--json").json
    assert ([spring["id"] for spring in document["springs"]], document["spools"]) == (["T-17"], [])


def test_a_change_is_told_in_one_line(run, drawer):
    assert run("stock", "take", "T-17", "2").out == f"T-17: 3 -> 1 on hand, drawer B4 ({DRAWER}:11)\n"
    assert "    on_hand: 1\n" in drawer.read_text("utf-8")
    assert run("stock", "put", "T-17", "1").out == f"T-17: 1 -> 2 on hand, drawer B4 ({DRAWER}:11)\n"
    told = run("stock", "take", "W08", "0.3m").out
    assert told == "W08: 6.2 m -> 5.9 m left, rack 2 (catalog/spools/wire.yaml:5)\n"


def test_taking_below_the_least_says_so(run, drawer):
    drawer.write_text(drawer.read_text("utf-8") + "    least: 3\n", "utf-8")
    assert "on hand, drawer B4; fewer than the 3 wanted (" in run("stock", "take", "T-17", "1").out


def test_a_dry_run_shows_the_changed_line_and_changes_nothing(run, drawer):
    before = drawer.read_bytes()
    assert run("stock", "take", "T-17", "2", "--dry-run").out == (
        f"T-17: 3 -> would be 1 on hand, drawer B4 ({DRAWER}:11)\n    on_hand: 1\n"
    )
    assert drawer.read_bytes() == before


def test_a_change_in_json(run, bench_folder):
    assert run("stock", "take", "T-17", "1", "--json").json == {
        "id": "T-17", "on_hand": 2, "file": DRAWER, "line": 11, "changed": ["    on_hand: 2"],
    }  # fmt: skip
    document = run("stock", "put", "W08", "1 m", "--json").json
    assert (document["on_hand"], document["length_left_mm"]) == (None, 7200)


def test_more_than_there_is_cannot_be_taken(run, drawer):
    before = drawer.read_bytes()
    ran = run("stock", "take", "T-17", "4")
    assert (ran.status, ran.out) == (1, "")
    assert ran.err.startswith(f"{DRAWER}:11:14: T-17 has 3, less than the 4 to be taken; ")
    assert drawer.read_bytes() == before


def test_an_unknown_id_is_a_wrong_command_line_with_the_nearest_told(run, bench_folder):
    ran = run("stock", "take", "T-71", "1")
    assert ran.status == 2
    assert ran.err == "there is no spring or spool “T-71”; expected the id of one; did you mean T-17?\n"
    ran = run("stock", "put", "T-71", "1", "--json")
    assert ran.status == 2
    assert ran.json["mistakes"][0]["suggestions"] == ["T-17"]


def test_an_id_in_two_files_stops_every_change(run, bench_folder, drawer):
    (drawer.parent / "other.yaml").write_bytes(drawer.read_bytes())
    ran = run("stock", "take", "T-17", "1")
    assert ran.status == 1
    assert "“T-17” is the id of another spring, at catalog/springs/drawer.yaml:2:9" in ran.err
    assert (drawer.parent / "other.yaml").read_bytes() == drawer.read_bytes()


def test_add_writes_a_record_with_the_next_free_id(run, drawer):
    ran = run(*ADD, "--on-hand", "2", "--place", "drawer B4")
    assert ran.out == f"T-18: added ({DRAWER}:17)\n"
    assert drawer.read_text("utf-8").endswith(
        "    lead_days: 4\n  - id: T-18\n    kind: compression\n    wire_diameter: 1\n    outside_diameter: 12\n"
        "    free_length: 40\n    total_coils: 9\n    ends: closed\n    material: music-wire\n    on_hand: 2\n"
        "    place: drawer B4\n"
    )
    assert run(*ADD, "--json").json["id"] == "T-19"


def test_add_as_a_dry_run_shows_the_record(run, drawer):
    before = drawer.read_bytes()
    ran = run(*ADD, "--dry-run")
    assert ran.out.splitlines()[:2] == [f"T-18: would be added ({DRAWER}:17)", "  - id: T-18"]
    assert drawer.read_bytes() == before


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("--free-lengh", "31"), "--free-lengh: “free_lengh” is no key of a compression spring"),
        (("--place",), "--place without a value"),
        (("--ends", "open"), "--ends twice"),
        (("31",), "“31”"),
        (("-x", "31"), "“-x”"),
        (("--rate", "5 N"), "--rate: 5 N is a force"),
    ],
)
def test_add_tells_wrong_options_with_status_2(run, drawer, words, message):
    before = drawer.read_bytes()
    ran = run(*ADD, *words)
    assert ran.status == 2
    assert ran.err.split(";")[0] == message
    assert drawer.read_bytes() == before


def test_without_a_terminal_add_tells_what_is_missing(run, bench_folder):
    ran = run("stock", "add", "--kind", "compression", "--wire-diameter", "1", "--outside-diameter", "9")
    assert ran.status == 2
    assert ran.err.splitlines()[0].startswith("no material, free_length or ends; ")


def test_on_a_terminal_add_asks_for_what_is_missing_and_again_where_an_answer_is_wrong(run, drawer, monkeypatch):
    terminal = io.StringIO("compresion\ncompression\n1,1\n1.1\n12\n9\nclosed\nmusic-wire\n2\n\n")
    monkeypatch.setattr(terminal, "isatty", lambda: True)
    monkeypatch.setattr(sys, "stdin", terminal)
    ran = run("stock", "add", "--free-length", "40", "--json")
    assert ran.status == 0, ran.err
    assert ran.err.count("did you mean") == 2
    assert ran.json["id"] == "T-18"
    text = drawer.read_text("utf-8")
    assert "    wire_diameter: 1.1\n" in text
    assert text.endswith("    on_hand: 2\n")


def test_check_tells_every_mistake_with_its_line_and_marks_under_it(run, drawer):
    text = drawer.read_text("utf-8").replace("outside_diameter: 9.6", 'outside_diameter: "9,6"   # ü')
    drawer.write_text(text.replace("pack: 10", "pack: many"), "utf-8")
    ran = run("stock", "check")
    assert ran.status == 1
    assert ran.out == (
        f"{DRAWER}:5:23: 9,6 has a comma as decimal sign; expected a decimal point; did you mean 9.6?\n"
        '        outside_diameter: "9,6"   # ü\n'
        "                          ^^^^^\n"
        f"{DRAWER}:15:11: “many” is no number; expected a number without a unit\n"
        "        pack: many\n"
        "              ^^^^\n"
        "2 mistakes, 0 doubts.\n"
    )
    assert len(run("stock", "check", "--json").json["mistakes"]) == 2


def test_check_tells_more_mistakes_than_other_commands_do(run, drawer):
    drawer.write_text(drawer.read_text("utf-8") + "".join(f"    nonsense{n}: 1\n" for n in range(10)), "utf-8")
    assert run("stock", "check").out.count("is no key of a compression spring") == 10


def test_check_tells_doubts_and_ends_well(run, drawer):
    drawer.write_text(drawer.read_text("utf-8").replace("rate: 1.31", "rate: 2.31"), "utf-8")
    ran = run("stock", "check")
    assert ran.status == 0
    assert ran.out.startswith(f"{DRAWER}:10:11: doubt: a stated rate of 2.31 N/mm; ")
    assert ran.out.endswith("    rate: 2.31 N/mm\n              ^^^^^^^^^\n0 mistakes, 1 doubt.\n")
    assert len(run("stock", "check", "--json").json["doubts"]) == 1


def test_check_marks_a_place_far_to_the_right_and_behind_wide_letters(run, drawer):
    flow = "  - {id: X, note: " + "弹簧 é" * 30 + ", ratee: 5}\n"
    drawer.write_text("springs:\n" + flow, "utf-8")
    told = run("stock", "check").out.splitlines()
    at = next(number for number, line in enumerate(told) if "“ratee”" in line)
    line, marks = told[at + 1 : at + 3]
    assert len(line) < 90
    before = line[: line.index("ratee")]
    assert marks.index("^") == len(before) + sum(letter in "弹簧" for letter in before)


BROKEN = {
    "an empty folder": None,
    "100 000 levels": b"springs: " + b"[" * 100_000,
    "an anchor bomb": b"a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nsprings: [*c, *c]\n",
    "NUL": b"springs:\n- id: A\0B\n",
    "UTF-16": "springs:\n- id: A\n".encode("utf-16"),
    "a file of nothing": b"",
}


@pytest.mark.parametrize("name", BROKEN)
@pytest.mark.parametrize("words", [("list",), ("find", "x"), ("low",), ("take", "T-17", "1"), ("check",), ADD[1:]])
def test_what_is_no_catalogue_is_told_by_every_subcommand_with_status_1(run, tmp_path, name, words):
    content = BROKEN[name]
    path = tmp_path / "drawer.yaml"
    if content is None:
        path.mkdir()
    else:
        path.write_bytes(content)
    ran = run("stock", *words, "--catalog", path)
    assert ran.status == 1
    assert str(path) in ran.out + ran.err
    assert run("stock", *words, "--catalog", path, "--json").json["mistakes"]
    assert content is None or path.read_bytes() == content


def test_a_lone_carriage_return_a_scalar_of_a_megabyte_and_a_file_of_20_are_counted_like_any_other(run, drawer):
    text = drawer.read_text("utf-8")
    notes = "".join(
        text.split("springs:\n")[1].replace("T-17", f"N-{number}") + f"    note: {'é ' * 333_333}x\n"
        for number in range(20)
    )
    drawer.write_bytes((text + notes).replace("\n", "\r").encode())
    assert len(drawer.read_bytes()) > 20_000_000
    before = drawer.read_bytes()
    assert run("stock", "take", "N-19", "1").out.startswith("N-19: 3 -> 2 on hand")
    head, behind = before.rsplit(b"on_hand: 3", 1)
    assert drawer.read_bytes() == head + b"on_hand: 2" + behind


@pytest.mark.parametrize("shown", ["T\\n17", "T\\x1b[2J17", "T\\u202e17"])
def test_ids_that_could_act_on_a_terminal_are_shown_as_escapes(run, drawer, shown):
    name = shown.encode().decode("unicode_escape")
    drawer.write_text(drawer.read_text("utf-8").replace("T-17", f'"{shown}"'), "utf-8")
    for words in (
        ("list",),
        ("find", "drawer"),
        ("take", name, "1"),
        ("take", name, "9"),
        ("check",),
        ("put", "x", "1"),
    ):
        ran = run("stock", *words)
        assert all(letter.isprintable() or letter == "\n" for letter in ran.out + ran.err)
    assert shown in run("stock", "list").out
    assert run("stock", "put", name, "1").out.startswith(f"{shown}: 2 -> 3 on hand")


@pytest.mark.parametrize("name", [DRAWER, "catalog/springs"])
def test_a_read_only_file_or_folder_is_told_and_left_alone(run, bench_folder, drawer, name):
    path, before = bench_folder / name, drawer.read_bytes()
    mode = path.stat().st_mode
    path.chmod(mode & ~0o222)
    try:
        ran = run("stock", "take", "T-17", "1")
        assert run("stock", "take", "T-17", "1", "--dry-run").status == 0
    finally:
        path.chmod(mode)
    assert (ran.status, ran.out) == (1, "")
    assert ran.err.startswith(f"{DRAWER}: you may not write it or its folder; ")
    assert drawer.read_bytes() == before
    assert os.listdir(drawer.parent) == ["drawer.yaml"]


def test_a_file_that_another_is_changing_is_told_with_who_does(run, bench_folder, drawer, monkeypatch):
    monkeypatch.setattr("sourcing.files.lock.LONGEST_WAIT_S", 0.0)
    with locked(str(drawer), DRAWER):
        ran = run("stock", "take", "T-17", "1")
    assert ran.status == 1
    assert re.match(
        rf"{DRAWER}: \S+ \(process {os.getpid()}\) is changing it since \d\d:\d\d:\d\d, for \d s; ", ran.err
    )


def test_a_linked_catalogue_is_changed_where_it_lies(run, bench_folder, drawer):
    kept = bench_folder / "kept.yaml"
    drawer.rename(kept)
    drawer.symlink_to(kept)
    assert run("stock", "take", "T-17", "1").out == f"T-17: 3 -> 2 on hand, drawer B4 ({DRAWER}:11)\n"
    assert drawer.is_symlink()
    assert "on_hand: 2" in kept.read_text("utf-8")


def test_stock_loads_nothing_slow_that_it_does_not_need(bench_folder):
    """A change in JSON needs the reader; nearest words, tables and numbers stay where they are."""
    code = (
        "import sys\nfrom sourcing.cli import main\n"
        "sys.argv = ['springwright', 'stock', 'take', 'T-17', '1', '--json']\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\nprint(*sys.modules, file=sys.stderr)\n"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert {"rapidfuzz", "tabulate", "numpy"}.isdisjoint(ran.stderr.split())


def test_a_bare_number_of_wire_that_can_hardly_be_millimetres_is_asked_about(run, bench_folder):
    ran = run("stock", "take", "W08", "0.3")
    assert ran.status == 2
    assert "0.3 may be metres or millimetres; expected a length with its unit, as in 0.3m" in " ".join(ran.err.split())
    assert run("stock", "take", "W08", "300", "--dry-run").status == 0
    assert run("stock", "put", "W08", "0.3m", "--dry-run").status == 0


def test_less_wire_than_is_counted_is_not_taken(run, bench_folder):
    ran = run("stock", "take", "W08", "0.01mm")
    assert ran.status == 2
    assert "is less than is counted" in ran.err


def test_a_spool_of_a_few_millimetres_is_doubted(run, bench_folder):
    spools = bench_folder / "catalog" / "spools" / "wire.yaml"
    spools.write_text(spools.read_text("utf-8").replace("6.2 m", "1.2"), "utf-8")
    assert "W08” has 1.20 mm of wire left" in run("stock", "check").out


@pytest.mark.parametrize("unbuffered", ["", "1"])
def test_what_cannot_be_written_out_is_told_in_a_line(bench_folder, unbuffered):
    command = [sys.executable, "-m", "sourcing", "stock", "list", "--catalog", str(bench_folder / "catalog")]
    with open("/dev/full", "w") as full:
        ran = subprocess.run(
            command,
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            cwd=Path(__file__).parents[2],
            env={**os.environ, "PYTHONUNBUFFERED": unbuffered},
        )
    assert ran.returncode == 1
    assert ran.stderr == (
        "What was found could not be written out (no space left on device); what was asked is done.\n"
    )
