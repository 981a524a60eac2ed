"""Mistakes as a user meets them: one line each, place first, all of all files, status 1, and JSON for programs."""

import json

import pytest

from sourcing.cli import door


def test_mistakes_of_the_need_and_of_the_catalogue_are_told_together(run, bench_folder):
    (bench_folder / "need.yaml").write_text("job: x\nkind: compresion\npocket: {bore: 11 mm}\n", "utf-8")
    drawer = bench_folder / "catalog/springs/drawer.yaml"
    drawer.write_text(drawer.read_text("utf-8").replace("wire_diameter: 0.9", "wire_diameter: 0,9"), "utf-8")
    ran = run("source", "need.yaml")
    assert ran.status == 1
    assert ran.out == ""
    lines = ran.err.splitlines()
    assert len(lines) == 2
    assert any(line.startswith("need.yaml:2:7: ") and "did you mean compression" in line for line in lines)
    assert any(line.startswith("catalog/springs/drawer.yaml:4:20: ") and "0.9" in line for line in lines)


def test_json_is_one_document_also_for_mistakes(run, bench_folder):
    (bench_folder / "need.yaml").write_text("job: x\nkind: compression\npocket: {bore: 5 N}\n", "utf-8")
    ran = run("source", "need.yaml", "--json")
    assert ran.status == 1
    (mistake,) = ran.json["mistakes"]
    assert set(mistake) == {"file", "line", "column", "found", "expected", "suggestions"}
    assert (mistake["file"], mistake["line"], mistake["column"]) == ("need.yaml", 3, 16)
    assert "force" in mistake["found"]
    assert ran.err == ""


def test_seven_mistakes_are_printed_and_the_rest_counted(run, bench_folder):
    keys = "".join(f"nonsense{number}: 1\n" for number in range(10))
    (bench_folder / "need.yaml").write_text(f"job: x\nkind: compression\npocket: {{bore: 11 mm}}\n{keys}", "utf-8")
    lines = run("source", "need.yaml").err.splitlines()
    assert len(lines) == door.SHOWN_MISTAKES + 1
    assert lines[-1] == "... and 3 more; --json tells all"


def test_a_missing_file_is_status_1_and_names_it(run, bench_folder):
    ran = run("source", "neeed.yaml")
    assert ran.status == 1
    assert ran.err.startswith("neeed.yaml: ")
    assert "need.yaml" in ran.err.removeprefix("neeed.yaml")


def test_a_wrong_command_line_is_status_2_and_a_document_with_json(run, bench_folder):
    ran = run("source", "need.yaml", "--no-such-option")
    assert ran.status == 2
    assert ran.out == ""
    ran = run("source", "need.yaml", "--no-such-option", "--json")
    assert ran.status == 2
    assert json.loads(ran.out)["mistakes"][0]["file"] is None


def test_an_unforeseen_error_is_told_in_two_lines_without_a_traceback(run, bench_folder, monkeypatch):
    from sourcing.verdict import verdict

    def fails(*_: object) -> None:
        raise RuntimeError("the bench fell over")

    monkeypatch.setattr(verdict, "decide", fails)
    monkeypatch.delenv("SPRINGWRIGHT_TRACEBACK", raising=False)
    ran = run("source", "need.yaml")
    assert ran.status == 70
    assert len(ran.err.splitlines()) == 2
    assert "Traceback" not in ran.err


@pytest.mark.parametrize(
    ("words", "found", "suggestions"),
    [
        ("trial W80 --mandrel 6 --outside 8.9", "SPOOL: there is no spool “W80”", ["W08"]),
        ("trial W80 --take-back", "SPOOL: there is no spool “W80”", ["W08"]),
        ("wind need.yaml --wire W80", "--wire: there is no spool “W80”", ["W08"]),
        ("wind need.yaml --mandrel 6mn", "--mandrel: ", []),
        ("wind need.yaml --shank hex", "--shank: there is no solid", []),
        ("wind need.yaml --heated perhaps", "--heated: “perhaps”", []),
        ("wind need.yaml --came-out 2", "--came-out: ", []),
        ("wind need.yaml --sheet out.txt", "--sheet: “out.txt” does not end in .html", []),
        ("describe catalog/springs/drawer.yaml --at 60deg", "--at: 60deg is an angle", []),
    ],
)
def test_a_wrong_word_of_the_command_line_is_told_alike_as_text_and_as_json(
    run, bench_folder, words, found, suggestions
):
    text, document = run(*words.split()), run(*words.split(), "--json")
    assert (text.status, document.status) == (2, 2)
    (mistake,) = document.json["mistakes"]
    assert mistake["found"].startswith(found)
    assert mistake["suggestions"] == suggestions or not suggestions
    assert mistake["expected"]
    assert text.err.startswith(f"{mistake['found']}; expected {mistake['expected']}")
