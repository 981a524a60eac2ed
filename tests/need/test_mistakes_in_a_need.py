"""Every mistake that a need file can hold, with the whole message."""

from pathlib import Path

import pytest

from sourcing.need.reading import read_need
from tests.files.told import mistakes_of, told, written

HEAD = "job: x\nkind: compression\n"
SIZE = "free_length: 31\n"
A_LENGTH = "a length (mm, cm, m, in, ft, thou)"
KEYS_OF_A_NEED = (
    "the keys of a need with their values: job, kind, what, duty, pocket, hand, cycles, surroundings, temperature, "
    "quantity, needed_within, material, wire_diameter, note, working, free_length, ends, end_1, end_2"
)


def mistakes(folder: Path, text: str) -> list[str]:
    return told(mistakes_of(read_need, written(folder, text)))


# What stands in line 3 (a free length in line 4 makes it a whole need), and what is said of it.
ONE_KEY = {
    "a key nobody knows": (
        "pokcet: {bore: 11}",
        "3:1: “pokcet” is no key of a need; expected one of its keys; did you mean pocket?",
    ),
    "a key like no other": ("zzz: 1", f"3:1: “zzz” is no key of a need; expected {KEYS_OF_A_NEED}"),
    "a key of an extension spring": (
        "hooks: full-loop",
        "3:1: hooks belongs to an extension spring; expected a key of this kind of spring, or another kind",
    ),
    "a key of a torsion spring": (
        "free_angle: 90",
        "3:1: free_angle belongs to a torsion spring; expected a key of this kind of spring, or another kind",
    ),
    "an empty text": ("what: ''", "3:7: nothing stands here; expected a text"),
    "a list as a text": ("what: [a, b]", "3:7: a list stands here; expected a text"),
    "keys as a text": ("note: {a: b}", "3:7: keys and values stand here; expected a text"),
    "nothing": ("cycles:", "3:8: nothing after cycles:; expected a value, or the line left out"),
    "no such duty": (
        "duty: gaurded",
        "3:7: “gaurded” is no kind of duty; expected ordinary or guarded; did you mean guarded?",
    ),
    "a text as a pocket": (
        "pocket: 11 mm",
        "3:9: “11 mm” stands here; expected the keys of a pocket with their values: bore, rod, depth",
    ),
    "a list as a pocket": (
        "pocket: [11 mm]",
        "3:9: a list stands here; expected the keys of a pocket with their values: bore, rod, depth",
    ),
    "an empty pocket": ("pocket: {}", "3:9: an empty pocket; expected at least one of bore, rod and depth"),
    "a key in the pocket": (
        "pocket: {boer: 11}",
        "3:10: “boer” is no key of a pocket; expected one of its keys; did you mean bore?",
    ),
    "a cone's pocket": (
        "pocket: {large_end: {bore: 11}}",
        "3:10: large_end belongs to a conical spring; expected a key of this kind of spring, or another kind",
    ),
    "a force as a length": ("pocket: {bore: 5 N}", f"3:16: 5 N is a force; expected {A_LENGTH}"),
    "a length of zero": ("pocket: {bore: 0}", "3:16: 0 is zero; expected a length above zero"),
    "a negative length": ("pocket: {rod: -6 mm}", "3:15: -6 mm is negative; expected a length above zero"),
    "no number": ("pocket: {bore: nan}", f"3:16: nan is no finite number; expected {A_LENGTH}"),
    "no finite number": ("pocket: {bore: .inf}", f"3:16: .inf is no finite number; expected {A_LENGTH}"),
    "a number out of all proportion": ("pocket: {bore: 1e400}", f"3:16: 1e400 is too large; expected {A_LENGTH}"),
    "a bore with an upper bound only": (
        "pocket: {bore: <= 11 mm}",
        "3:16: <= 11 mm says nothing of how narrow the bore can be; expected the bore, or the narrowest it can be: "
        'that is what the spring must go into; did you mean ">= 11 mm"?',
    ),
    "a rod with a lower bound only": (
        "pocket: {rod: '>= 6 mm'}",
        "3:15: >= 6 mm says nothing of how thick the rod can be; expected the rod, or the thickest it can be: "
        "that is what the spring must go over; did you mean <= 6 mm?",
    ),
    "a rod as thick as the bore": (
        "pocket: {bore: 11 mm, rod: 11 mm}",
        "3:28: a rod of 11 mm in a bore of 11 mm; expected a rod thinner than the bore",
    ),
    "a text as working": (
        "working: 24 mm",
        "3:10: “24 mm” stands here; expected a list of working points, as in  - {length: 24 mm, force: 9 N}",
    ),
    "keys as working": (
        "working: {length: 24 mm}",
        "3:10: keys and values stand here; expected a list of working points, as in  - {length: 24 mm, force: 9 N}",
    ),
    "no working point": (
        "working: []",
        "3:10: an empty list; expected a working point, as in  - {length: 24 mm, force: 9 N}",
    ),
    "a text as a working point": (
        "working: [24 mm]",
        "3:11: “24 mm” stands here; expected the keys of a working point with their values: length, force",
    ),
    "a working point without its length": (
        "working: [{force: 9 N}]",
        "3:11: no length; expected the key length with a length, as in 24 mm",
    ),
    "a range as a working length": (
        "working: [{length: 20..24 mm}]",
        "3:20: 20..24 mm is no one length; expected the length at which the force is wanted, as in 24 mm ± 0.5 mm",
    ),
    "a torsion spring's working point": (
        "working: [{length: 24, torque: 5}]",
        "3:24: torque belongs to a torsion spring; expected a key of this kind of spring, or another kind",
    ),
    "a tolerance that reaches zero": (
        "working: [{length: 5 mm ± 5 mm}]",
        "3:20: 5 mm ± 5 mm has a tolerance that reaches zero; expected a length that stays above zero",
    ),
    "a force of zero": ("working: [{length: 24, force: 0 N}]", "3:31: 0 N is zero; expected a force above zero"),
    "a length above the free length": (
        "working: [{length: 40 mm}]",
        "3:20: 40 mm is longer than the free length; expected a working length of 31.0 mm or less (free_length: 31)",
    ),
    "two points of one length": (
        "working: [{length: 20}, {length: 2 cm}]",
        "3:34: 2 cm is the length of the working point on line 3; expected another length at each working point",
    ),
    "forces that fall": (
        "working: [{length: 14 mm, force: 5 N}, {length: 24 mm, force: 9 N ± 15 %}]",
        "3:34: 5 N at 14 mm, but 9 N ± 15 % at 24 mm; expected a force that rises as a compression spring gets shorter",
    ),
    "forces in bounds that fall": (
        "working: [{length: 14, force: <= 5 N}, {length: 24, force: 6..9 N}]",
        "3:31: <= 5 N at 14, but 6..9 N at 24; expected a force that rises as a compression spring gets shorter",
    ),
    "no kind of ends": (
        "ends: flat",
        "3:7: “flat” is no kind of ends; expected open, open-ground, closed or closed-ground",
    ),
    "no hand": ("hand: rigth", "3:7: “rigth” is no hand; expected right or left; did you mean right?"),
    "part of a cycle": ("cycles: 1.5", "3:9: 1.5 is not whole; expected a whole number of cycles, as in 20000"),
    "no cycle": ("cycles: 0", "3:9: 0 is zero; expected a number of cycles above zero"),
    "no word for surroundings": (
        "surroundings: [dry]",
        "3:16: “dry” is no word for surroundings; expected indoor-dry, damp, wet, salt or food; "
        "did you mean indoor-dry?",
    ),
    "keys as surroundings": (
        "surroundings: {wet: yes}",
        "3:15: keys and values stand here; expected a list of words, as in [indoor-dry]",
    ),
    "below absolute zero": (
        "temperature: -300 degC",
        "3:14: -300 degC is below absolute zero; expected a temperature of -273.15 degC or above",
    ),
    "none": ("quantity: 0", "3:11: 0 is less than 1; expected a whole number, 1 or more"),
    "part of a spring": ("quantity: 1.5", "3:11: 1.5 is not whole; expected a whole number"),
    "before today": ("needed_within: -1 days", "3:16: -1 days is negative; expected a time of zero or above"),
    "a material nobody knows": (
        "material: musicwire",
        "3:11: “musicwire” is no material that is known; expected music-wire, hard-drawn, oil-tempered, "
        "stainless-1.4310, stainless-1.4568, phosphor-bronze, brass, beryllium-copper, unknown-steel or a standard's "
        "own name, as in EN 10270-1 DH; did you mean music-wire?",
    ),
    "a wire of zero": ("wire_diameter: 0", "3:16: 0 is zero; expected a wire diameter above zero"),
    "a comma": (
        "wire_diameter: 0,8 mm",
        "3:16: 0,8 mm has a comma as decimal sign; expected a decimal point; did you mean 0.8 mm?",
    ),
    "a comma in braces": (
        "pocket: {bore: 10,5 mm, rod: 6}",
        "3:16: 10,5 mm has a comma as decimal sign; expected a decimal point; did you mean 10.5 mm?",
    ),
}


@pytest.mark.parametrize(("line", "message"), ONE_KEY.values(), ids=ONE_KEY)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, line: str, message: str) -> None:
    assert mistakes(tmp_path, f"{HEAD}{line}\n{SIZE}") == [message]


@pytest.mark.parametrize("text", ["010", "0x10", "1:30", "1_000", "yes", "~", "-.inf", "NaN", "1,5", "5 N"])
def test_what_yaml_would_guess_at_is_no_figure(tmp_path: Path, text: str) -> None:
    (finding,) = mistakes_of(read_need, written(tmp_path, f"{HEAD}free_length: {text}\n"))
    assert (finding.place.line, finding.place.column) == (3, 14)
    assert text in finding.found


@pytest.mark.parametrize(
    ("word", "kind"),
    [
        ("cone", "conical"),
        ("Tapered", "conical"),
        ("cone spring", "conical"),
        ("cylindrical", "compression"),
        ("push", "compression"),
        ("pull", "extension"),
    ],
)
def test_a_word_that_means_a_kind_is_told_it_and_the_rest_is_read_as_that_kind(
    tmp_path: Path, word: str, kind: str
) -> None:
    own = {
        "conical": "pocket: {large_end: {bore: 18 mm}}",
        "compression": "ends: closed",
        "extension": "hooks: full-loop",
    }
    assert mistakes(tmp_path, f"job: x\nkind: {word}\nfree_length: 16 mm\n{own[kind]}\n") == [
        f"2:7: “{word}” is no kind of spring; expected compression, conical, extension or torsion; did you mean {kind}?"
    ]


def test_a_misspelt_kind_is_told_with_the_nearest_and_the_rest_is_read_as_that_kind(tmp_path: Path) -> None:
    assert mistakes(tmp_path, "job: x\nkind: compresion\nfree_length: 0\n") == [
        "2:7: “compresion” is no kind of spring; expected compression, conical, extension or torsion; "
        "did you mean compression?",
        "3:14: 0 is zero; expected a length above zero",
    ]
    assert mistakes(tmp_path, "job: x\nkind: extention\nhooks: full-loop\nfree_length: 0\n") == [
        "2:7: “extention” is no kind of spring; expected compression, conical, extension or torsion; "
        "did you mean extension?",
        "4:14: 0 is zero; expected a length above zero",
    ]


def test_keys_that_a_need_must_have_are_told(tmp_path: Path) -> None:
    assert mistakes(tmp_path, "free_length: 31\n") == ["1:1: no job or kind; expected all of these keys in a need"]
    assert mistakes(tmp_path, "kind: compression\nfree_length: 31\n") == [
        "1:1: no job; expected the key job with a text"
    ]
    assert mistakes(tmp_path, HEAD) == [
        "1:1: nothing of the spring's size; expected at least one of working, pocket and free_length"
    ]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("# later\n", "nothing but comments; expected a need, with job and kind first"),
        ("", "an empty file; expected keys and values"),
        ("springs:\n  - id: A\n", "1:1: a list of springs; expected a need, with job and kind first"),
        ("- job: x\n", f"1:1: a list stands here; expected {KEYS_OF_A_NEED}"),
        ("a spring\n", f"1:1: “a spring” stands here; expected {KEYS_OF_A_NEED}"),
    ],
)
def test_another_file_is_no_need(tmp_path: Path, text: str, message: str) -> None:
    assert mistakes(tmp_path, text) == [message]


def test_all_mistakes_of_a_need_are_told_in_the_order_of_its_lines(tmp_path: Path) -> None:
    text = """
        job: x
        kind: compression
        job: y
        pocket: {bore: 5 N, rod: 11 mm, rood: 3}
        working:
          - {length: 40 mm, force: 9 N, force: 8 N}
          - {force: 5 N}
        free_length: 31 mm
        ends: flat
        ends: &flat open
    """
    assert [line.split(" ")[0] for line in mistakes(tmp_path, text)] == [
        "3:1:", "4:16:", "4:33:", "6:14:", "6:33:", "7:5:", "9:7:", "10:1:", "10:7:",
    ]  # fmt: skip


def test_figures_are_compared_though_other_keys_are_wrong(tmp_path: Path) -> None:
    text = f"{HEAD}zzz: 1\nfree_length: 31\nworking: [{{length: 40, force: x}}]\n"
    assert [line.split(":")[1] for line in mistakes(tmp_path, text)] == ["1", "20", "31"]
