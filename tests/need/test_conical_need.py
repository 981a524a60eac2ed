"""A need of a conical spring: a straight pocket, or a pocket for each of its ends, and every mistake in them."""

from pathlib import Path

import pytest

from sourcing.files.findings import Place
from sourcing.need.model import Pocket, PocketEnd
from sourcing.need.reading import read_need
from sourcing.quantities import Wanted
from tests.files.told import mistakes_of, told, written

HEAD = "job: x\nkind: conical\n"


def pocket(folder: Path, text: str) -> Pocket:
    return read_need(written(folder, f"{HEAD}pocket: {text}\n")).pocket


def mistakes(folder: Path, line: str) -> list[str]:
    return told(mistakes_of(read_need, written(folder, f"{HEAD}{line}\nfree_length: 31\n")))


def test_each_end_has_a_bore_and_a_rod_of_its_own(tmp_path: Path) -> None:
    path = written(
        tmp_path,
        """
        job: lamp-switch
        kind: conical
        pocket:
          large_end: {bore: 19 mm}
          small_end: {bore: 10 mm ± 0.2 mm, rod: 5 mm}
          depth: 14 mm
        working:
          - {length: 6 mm, force: 5 N}
        """,
    )
    need = read_need(path)
    assert need.kind == "conical"
    assert need.pocket == Pocket(
        depth_mm=Wanted(nominal=14),
        large_end=PocketEnd(Wanted(nominal=19)),
        small_end=PocketEnd(Wanted(nominal=10, minus=0.2, plus=0.2), Wanted(nominal=5)),
    )
    assert need.places["pocket.small_end.rod"] == Place(str(path), 5, 42)


def test_a_straight_bore_and_rod_run_past_both_ends(tmp_path: Path) -> None:
    assert pocket(tmp_path, "{bore: 19, rod: 5}") == Pocket(Wanted(nominal=19), Wanted(nominal=5))
    assert len(pocket(tmp_path, "{bore: 19, small_end: {bore: 10, rod: 5}}").bores_mm) == 2


ONE_LINE = {
    "a narrower bore at the large end": (
        "pocket: {large_end: {bore: 10 mm}, small_end: {bore: 19 mm}}",
        "3:28: a bore of 10 mm for the large end, and one of 19 mm for the small end; "
        "expected the wider bore at the large end",
    ),
    "a rod as thick as its end's bore": (
        "pocket: {small_end: {bore: 5 mm, rod: 5 mm}}",
        "3:39: a rod of 5 mm in a bore of 5 mm; expected a rod thinner than the bore",
    ),
    "a rod at the small end that is thicker than the bore at the large one": (
        "pocket: {large_end: {bore: 10 mm}, small_end: {rod: 12 mm}}",
        "3:53: a rod of 12 mm at the small end, and a bore of 10 mm at the large end; "
        "expected a rod thinner than the bore",
    ),
    "a rod as thick as a straight bore": (
        "pocket: {bore: 10 mm, rod: 12 mm}",
        "3:28: a rod of 12 mm in a bore of 10 mm; expected a rod thinner than the bore",
    ),
    "an empty pocket": (
        "pocket: {}",
        "3:9: an empty pocket; expected at least one of large_end, small_end, bore, rod and depth",
    ),
    "an empty end": ("pocket: {large_end: {}}", "3:21: an empty end; expected at least one of bore and rod"),
    "a length as an end": (
        "pocket: {large_end: 19 mm}",
        "3:21: “19 mm” stands here; expected the keys of an end of a pocket with their values: bore, rod",
    ),
    "a depth of an end": (
        "pocket: {large_end: {depth: 5}}",
        "3:22: “depth” is no key of an end of a pocket; "
        "expected the keys of an end of a pocket with their values: bore, rod",
    ),
    "a bore with an upper bound only": (
        "pocket: {large_end: {bore: <= 19 mm}}",
        "3:28: <= 19 mm says nothing of how narrow the bore can be; expected the bore, or the narrowest it can be: "
        'that is what the spring must go into; did you mean ">= 19 mm"?',
    ),
    "an end nobody knows": (
        "pocket: {larg_end: {bore: 19}}",
        "3:10: “larg_end” is no key of a pocket; expected one of its keys; did you mean large_end?",
    ),
    "a torsion spring's pocket": (
        "pocket: {width: 19}",
        "3:10: width belongs to a torsion spring; expected a key of this kind of spring, or another kind",
    ),
}


@pytest.mark.parametrize(("line", "message"), ONE_LINE.values(), ids=ONE_LINE)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, line: str, message: str) -> None:
    assert mistakes(tmp_path, line) == [message]


def test_a_misspelt_conical_is_read_as_conical(tmp_path: Path) -> None:
    text = "job: x\nkind: conicl\npocket: {large_end: {bore: 0}}\n"
    assert told(mistakes_of(read_need, written(tmp_path, text))) == [
        "2:7: “conicl” is no kind of spring; expected compression, conical, extension or torsion; "
        "did you mean conical?",
        "3:28: 0 is zero; expected a length above zero",
    ]
