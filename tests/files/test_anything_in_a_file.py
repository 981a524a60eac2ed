"""Whatever stands in a file, the readers give a value or mistakes with their places, and nothing else."""

import string
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.files.events import parse
from sourcing.files.findings import Finding, Mistakes, shown
from sourcing.need.reading import read_need
from sourcing.stock.reading import read_catalogue

NEED = [
    "job", "kind", "what", "duty", "pocket", "bore", "rod", "depth", "working", "length", "force", "free_length",
    "ends", "hand", "cycles", "surroundings", "temperature", "quantity", "needed_within", "material",
    "wire_diameter", "note",
]  # fmt: skip
STOCK = [
    "id", "kind", "wire_diameter", "outside_diameter", "mean_diameter", "inside_diameter", "free_length", "total_coils",
    "active_coils", "ends", "material", "rate", "grade", "shear_modulus", "on_hand", "price", "pack", "lead_days",
    "length_left", "trials", "mandrel", "turns", "heated", "on", "hooks", "leg_1",
]  # fmt: skip
BENCH = [
    "currency", "units", "hour_value", "rods", "tools", "printer_bed", "oven", "sellers", "postage", "spring_maker",
    "name", "price", "tolerances", "force", "clearance", "bore", "hand_winding", "caution", "prefer", "least_chance",
]  # fmt: skip
KEYS = [*NEED, *STOCK, *BENCH, "springs", "spools", "zzz"]
TEXTS = [
    "compression", "torsion", "ordinary", "closed-ground", "open", "left", "music-wire", "EN 10270-1 DH", "wet", "inch",
    "0", "-1", "1", "2", "9.75", "31", "5 N", "24 mm", "9 N ± 15 %", "20..24 mm", "'>= 5 N'", "<= 4 mm", "5 ± 5", "4e4",
    "nan", ".inf", "1e400", "010", "0x10", "yes", "~", "MWG 20", "1/4 in", "0.42 EUR", "EUR", "none", "80 %", "vice",
]  # fmt: skip
ODD = ["", "''", "#x", "é", "a: b", "[", "}", "\t", "&a b", "*a", "!b c", "1,5", '"\\x1b[2J"', "a\n  b", "9" * 400]

scalars = st.sampled_from(TEXTS) | st.sampled_from(TEXTS) | st.sampled_from(ODD) | st.text(string.printable, max_size=8)
values = st.recursive(
    scalars,
    lambda inner: (
        st.lists(inner, max_size=3).map(lambda items: f"[{', '.join(items)}]")
        | st.lists(st.tuples(st.sampled_from(KEYS), inner), max_size=4).map(
            lambda pairs: "{" + ", ".join(f"{key}: {value}" for key, value in pairs) + "}"
        )
    ),
    max_leaves=12,
)
blocks = st.lists(st.tuples(st.sampled_from(["", "  ", "  - ", "    "]), st.sampled_from(KEYS), values), max_size=12)
files = blocks.map(lambda lines: "".join(f"{indent}{key}: {value}\n" for indent, key, value in lines))
whole = st.lists(st.tuples(st.sampled_from(KEYS), values), max_size=20).map(
    lambda pairs: ", ".join(f"{key}: {value}" for key, value in pairs)
)
catalogues = st.sampled_from(["springs: [{%s}]", "springs: [{kind: compression, %s}]", "spools: [{%s}]"])

steady = settings(deadline=None, derandomize=True)


def findings_of(reader: Callable[[Path], object], path: Path) -> tuple[Finding, ...] | None:
    try:
        reader(path)
    except Mistakes as mistakes:
        return mistakes.findings
    return None


def read(reader: Callable[[Path], object], path: Path) -> None:
    findings = findings_of(reader, path)
    assert findings is None or findings
    for finding in findings or ():
        assert finding.place.file
        assert (finding.place.line is None) == (finding.place.column is None)
        assert finding.found
        assert finding.expected
        assert "pydantic" not in finding.found + finding.expected
        assert shown(finding.found).isprintable()


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("anything") / "file.yaml"


@steady
@given(content=st.binary(max_size=200))
def test_any_bytes(path: Path, content: bytes) -> None:
    path.write_bytes(content)
    read(read_need, path)
    read(read_catalogue, path)


@steady
@given(text=files)
def test_lines_of_keys_and_values(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8", newline="")
    read(read_need, path)
    read(read_catalogue, path)


@steady
@given(inner=whole, frame=catalogues)
def test_a_need_or_a_record_of_any_keys(path: Path, inner: str, frame: str) -> None:
    path.write_text("{job: x, kind: compression, " + inner + "}", encoding="utf-8", newline="")
    read(read_need, path)
    path.write_text(frame % inner, encoding="utf-8", newline="")
    read(read_catalogue, path)


@steady
@given(inner=whole)
def test_a_bench_of_any_keys(tmp_path_factory: pytest.TempPathFactory, inner: str) -> None:
    folder = tmp_path_factory.getbasetemp() / "any-bench"
    folder.mkdir(exist_ok=True)
    (folder / "bench.yaml").write_text("{" + inner + "}", encoding="utf-8", newline="")
    read(read_catalogue, folder)


GOOD = {
    "need.yaml": {
        "job": "x", "kind": "compression", "duty": "ordinary", "pocket": "{bore: 11 mm, rod: 6 mm}", "quantity": "2",
        "working": "[{length: 24 mm, force: 9 N}, {length: 14 mm}]", "free_length": "31 ± 2", "surroundings": "[wet]",
        "ends": "open", "cycles": "2e4", "material": "music-wire", "temperature": "20", "needed_within": "3",
    },
    "springs/a.yaml": {
        "id": "A", "kind": "compression", "wire_diameter": "0.9", "outside_diameter": "9.6", "free_length": "31",
        "total_coils": "9.75", "active_coils": "7", "ends": "closed", "material": "music-wire", "rate": "1.31",
        "grade": "2", "shear_modulus": "80000", "price": "1 EUR", "pack": "10", "on_hand": "3", "hand": "left",
    },
    "spools/a.yaml": {
        "id": "W", "material": "music-wire", "wire_diameter": "0.8", "length_left": "6 m", "price_per_metre": "1",
        "trials": "[{mandrel: 6, outside_diameter: 8.9}, {mandrel: 6, inside_diameter: 7.3, heated: no}]",
    },
    "bench.yaml": {
        "currency": "EUR", "rods": "[3, 4]", "tools": "[vice]", "printer_bed": "[200, 200, 180]", "oven": "none",
        "sellers": "{A: {postage: 3, lead_days: 4}}", "spring_maker": "{name: x, price: 4}", "prefer": "{}",
        "tolerances": "{force: 15 %, length: 1}", "hand_winding": "{caution: 1, stop: 2}", "units": "mm",
    },
}  # fmt: skip
changes = st.dictionaries(st.sampled_from(KEYS), values, max_size=4)


@steady
@given(name=st.sampled_from(list(GOOD)), changed=changes, without=st.sets(st.sampled_from(KEYS), max_size=1))
def test_other_values_in_good_files(
    tmp_path_factory: pytest.TempPathFactory, name: str, changed: dict[str, str], without: set[str]
) -> None:
    folder = tmp_path_factory.mktemp("changed")
    inner = {key: value for key, value in {**GOOD[name], **changed}.items() if key not in without}
    text = "{" + ", ".join(f"{key}: {value}" for key, value in inner.items()) + "}"
    file = folder / name
    file.parent.mkdir(exist_ok=True)
    file.write_text(f"{name.split('/')[0]}: [{text}]" if "/" in name else text, encoding="utf-8", newline="")
    read(*((read_need, file) if name == "need.yaml" else (read_catalogue, folder)))


plain = st.text(string.ascii_letters + "éß😀 ", min_size=1, max_size=6).map(str.strip).filter(bool)


@steady
@given(lines=st.lists(st.tuples(plain, plain), min_size=1, unique_by=lambda line: line[0]))
def test_a_place_leads_back_to_the_very_key_and_value(lines: list[tuple[str, str]]) -> None:
    text = "".join(f"{key}: {value}\n" for key, value in lines)
    document, findings = parse(text, "f")
    assert not findings
    assert document is not None
    assert isinstance(document.value, dict)
    rows = text.splitlines()
    for key, value in lines:
        key_place, place = document.key_place(document.value, key), document.place(document.value, key)
        assert rows[(key_place.line or 0) - 1][(key_place.column or 0) - 1 :].startswith(key)
        assert rows[(place.line or 0) - 1][(place.column or 0) - 1 :] == value
