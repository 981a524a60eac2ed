"""`wind --came-out` and its kin, of every kind of spring: what serves is answered, what does not is told, and nothing
is written."""

import json
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parents[2] / "examples"
SHIPPED = Path(__file__).parents[2] / "catalog"


def shipped(name: str) -> tuple[str, ...]:
    return ("wind", str(EXAMPLES / name / "need.yaml"), "--catalog", str(SHIPPED))


ANSWERED = [
    ("punch-return", ("--came-out", "10.4 mm", "--came-out-pitch", "4.1 mm")),
    ("treadle-foot", ("--came-out", "0.45 in")),
    ("treadle-foot", ("--pressed-to", "1 3/8 in")),
    ("lamp-button", ("--came-out", "17.6 mm")),
    ("lamp-button", ("--came-out-small-end", "10.2 mm")),
    ("lamp-button", ("--came-out", "17.6 mm", "--came-out-small-end", "10.1 mm")),
    ("lamp-button", ("--came-out-pitch", "3.0 mm")),
    ("lamp-button", ("--pressed-to", "14.6 mm")),
    ("card-drawer", ("--came-out", "6.9 mm")),
    ("card-drawer", ("--came-out-tension", "0.4 N")),
    ("lamp-arm", ("--came-out-pitch", "1.3 mm")),
    ("lamp-arm", ("--pulled-to", "62 mm", "--heated", "yes")),
    ("cupboard-handle", ("--came-out", "12.9 mm")),
    ("sewing-box", ("--came-out-angle", "60 deg")),
    ("sewing-box", ("--mandrel", "5.5", "--came-out", "8.8 mm", "--came-out-angle", "110 deg", "--heated", "no")),
]


@pytest.mark.parametrize(("example", "words"), ANSWERED, ids=[" ".join((name, *words)) for name, words in ANSWERED])
def test_what_was_measured_is_answered_in_lines_of_80_columns_and_in_json(run, example, words):
    ran = run(*shipped(example), *words)
    assert ran.status == 0, ran.err
    assert all(len(line.replace("\x1b[1m", "").replace("\x1b[0m", "")) <= 80 for line in ran.out.splitlines())
    document = run(*shipped(example), *words, "--json").json
    assert document["answer"] in ("keep", "change", "wind again")
    assert document["said"]
    assert document["fits"] in ("yes", "near", "no")


REFUSED = [
    ("lamp-button", ("--came-out-angle", "90"), "--came-out-angle of a spring of kind conical; expected --came-out, "),
    ("lamp-button", ("--came-out-tension", "4"), "--came-out-tension of a spring of kind conical"),
    ("lamp-button", ("--came-out", "9", "--came-out-small-end", "12"), "the larger one first"),
    ("lamp-arm", ("--pressed-to", "62"), "--pressed-to of a spring of kind extension"),
    ("lamp-arm", ("--came-out", "13", "--came-out-pitch", "1.3"), "expected one of them"),
    ("lamp-arm", ("--came-out-tension", "-4"), "-4 is negative"),
    ("lamp-arm", ("--came-out-tension", "4 mm"), "expected a force"),
    ("lamp-arm", ("--came-out-tension", "nan"), "nan is no finite number"),
    ("lamp-arm", ("--pulled-to", "20"), "shorter than its body"),
    ("lamp-arm", ("--came-out-pitch", "0.9"), "less than the wire"),
    ("sewing-box", ("--came-out-angle", "-20"), "340 deg, if that is what you mean"),
    ("sewing-box", ("--came-out-angle", "20 mm"), "20 mm is a length"),
    ("sewing-box", ("--came-out", "7.5"), "less than its mandrel and two wires"),
    ("sewing-box", ("--came-out-small-end", "7.5"), "--came-out-small-end of a spring of kind torsion"),
    ("punch-return", ("--came-out-small-end", "9"), "--came-out-small-end of a spring of kind compression"),
    ("punch-return", ("--came-out", "10", "--pressed-to", "30"), "or --came-out with --came-out-pitch"),
    ("punch-return", ("--came-out-pitch", "0.2"), "less than the wire"),
    ("punch-return", ("--pressed-to", "2"), "shorter than it is pressed solid"),
    ("punch-return", ("--heated", "yes"), "no coil was measured"),
    ("punch-return", ("--came-out", "10", "--heated", "perhaps"), "perhaps; expected yes or no"),
    ("punch-return", ("--came-out", "-10"), "-10 is negative"),
    ("punch-return", ("--came-out", "10 N"), "10 N is a force"),
]


@pytest.mark.parametrize(("example", "words", "said"), REFUSED, ids=[" ".join((e, *w)) for e, w, _ in REFUSED])
def test_what_no_coil_of_its_kind_can_measure_is_a_wrong_command_line_in_plain_words(run, example, words, said):
    before = {path: path.read_bytes() for path in SHIPPED.rglob("*.yaml")}
    ran = run(*shipped(example), *words)
    assert ran.status == 2
    assert said in " ".join(ran.err.split())
    assert ran.out == ""
    assert {path: path.read_bytes() for path in SHIPPED.rglob("*.yaml")} == before


def test_in_json_a_refusal_is_one_document(run):
    ran = run(*shipped("lamp-button"), "--came-out-angle", "90", "--json")
    assert ran.status == 2
    assert "mistakes" in json.loads(ran.out)


def test_an_inch_bench_is_answered_in_inches(run, bench_folder):
    bench = bench_folder / "catalog" / "bench.yaml"
    bench.write_text("units: inch\n" + bench.read_text("utf-8"), "utf-8")
    for words in (("--came-out", "0.39 in"), ("--came-out-pitch", "0.1 in"), ("--pressed-to", "1.1 in")):
        out = run("wind", "need.yaml", *words).out
        assert " in" in out
        assert " mm" not in out


def test_what_to_write_down_can_be_typed_as_it_stands(run, bench_folder):
    """The line that is offered for a coil measured after heat is a trial measured after heat."""
    said = run("wind", "need.yaml", "--wire", "W08", "--came-out", "10 mm", "--heated", "yes", "--json").json["said"]
    (line,) = [each.removeprefix("Write it down: springwright ") for each in said if each.startswith("Write it down")]
    ran = run(*line.split(), "--json")
    assert ran.status == 0
    assert ran.json["trial"]["heated"] is True
