"""A change in a user's file replaces only the characters that change, in the way of writing that stands there."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.files.events import parse
from sourcing.files.findings import Mistakes
from sourcing.files.splicing import as_scalar, source_of, with_entry, with_inner_entry, with_value, without_last_entry
from tests.files.told import told

UNSURE = (
    "a way of writing that a program cannot change safely; "
    "expected the change by hand, in an editor; nothing was changed"
)


def changed(text: str, key: str, value: str, number: int = 0) -> str:
    return with_value(source_of(text.encode(), "f"), "springs", number, key, value).raw.decode()


def added(text: str) -> str:
    return with_entry(source_of(text.encode(), "f"), "springs", {"id": "N", "place": "a: b"}).raw.decode()


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("springs:\n  - id: A\n    on_hand:   13 # é\n", "springs:\n  - id: A\n    on_hand:   2 # é\n"),
        ("springs:\n- {on_hand: 13, id: A}", "springs:\n- {on_hand: 2, id: A}"),
        ("springs: [{id: A, on_hand: 13}]", "springs: [{id: A, on_hand: 2}]"),
        ("springs:\n- on_hand: '13'\n  id: A\n", "springs:\n- on_hand: '2'\n  id: A\n"),
        ('springs:\n- "on_hand": "1\\x33"\n', 'springs:\n- "on_hand": "2"\n'),
        ("\ufeffsprings:\r\n- on_hand: 13\r\n", "\ufeffsprings:\r\n- on_hand: 2\r\n"),
        ("springs:\r- id: 😀\r  on_hand: 13\r", "springs:\r- id: 😀\r  on_hand: 2\r"),
        ("springs:\n- on_hand: |\n    13\n\n- id: B\n", "springs:\n- on_hand: 2\n\n- id: B\n"),
        ("springs:\n- on_hand: 1\n   3\n  id: A\n", "springs:\n- on_hand: 2\n  id: A\n"),
        ("springs:\n-\n  ? on_hand\n  : 13\n", "springs:\n-\n  ? on_hand\n  : 2\n"),
    ],
)
def test_a_value_is_replaced_within_its_quotes_and_nothing_else(before: str, after: str) -> None:
    assert changed(before, "on_hand", "2") == after


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("springs:\n  - id: A # x\n\n  - id: B", "springs:\n  - id: A # x\n    on_hand: 2\n\n  - id: B"),
        ("springs:\n  - id: A", "springs:\n  - id: A\n    on_hand: 2"),
        ("springs:\r\n- id: A\r\n", "springs:\r\n- id: A\r\n  on_hand: 2\r\n"),
        ("springs:\r- id: A", "springs:\r- id: A\r  on_hand: 2"),
        ("springs:\n- {id: A}\n", "springs:\n- {id: A, on_hand: 2}\n"),
        ("springs:\n- {id: A, }\n", "springs:\n- {id: A, on_hand: 2, }\n"),
        ('springs: [{"id": "A"}]', 'springs: [{"id": "A", "on_hand": 2}]'),
        (
            "springs:\n- {id: A, # x\n   note: b # y\n  }\n",
            "springs:\n- {id: A, # x\n   note: b, on_hand: 2 # y\n  }\n",
        ),
        ("springs:\n- {id: A, trials: [1, 2]}\n", "springs:\n- {id: A, trials: [1, 2], on_hand: 2}\n"),
        (
            "springs:\n- id: A\n  note: |\n    of\n    lines\n  trials:\n    - a\n",
            "springs:\n- id: A\n  on_hand: 2\n  note: |\n    of\n    lines\n  trials:\n    - a\n",
        ),
    ],
)
def test_a_key_that_is_not_there_is_put_in_as_the_record_is_written(before: str, after: str) -> None:
    assert changed(before, "on_hand", "2") == after


def tried(text: str, number: int = 0) -> str:
    entry = {"mandrel": "6.0", "on": "steel rod"}
    return with_inner_entry(source_of(text.encode(), "f"), "spools", number, "trials", entry).raw.decode()


NEW = "{mandrel: 6.0, on: steel rod}"


@pytest.mark.parametrize(
    ("before", "after"),
    [
        (
            "spools:\n  - id: A # x\n    trials:\n      - {mandrel: 5,\n         heated: no} # y\n\n  - id: B\n",
            "spools:\n  - id: A # x\n    trials:\n      - {mandrel: 5,\n         heated: no} # y\n"
            f"      - {NEW}\n\n  - id: B\n",
        ),
        (
            "spools:\r\n- id: A\r\n  trials:\r\n  - mandrel: 5\r\n    turns: 4 # é\r\n- id: B\r\n",
            f"spools:\r\n- id: A\r\n  trials:\r\n  - mandrel: 5\r\n    turns: 4 # é\r\n  - {NEW}\r\n- id: B\r\n",
        ),
        ("spools:\n- id: A\n  trials: []\n", f"spools:\n- id: A\n  trials: [{NEW}]\n"),
        ("spools:\n- {id: A, trials: [{mandrel: 5}]}", f"spools:\n- {{id: A, trials: [{{mandrel: 5}}, {NEW}]}}"),
        ("spools:\n- {id: A}\n", f"spools:\n- {{id: A, trials: [{NEW}]}}\n"),
        ("spools:\n  - id: A # x\n  - id: B", f"spools:\n  - id: A # x\n    trials:\n      - {NEW}\n  - id: B"),
        ("spools:\n  - id: A", f"spools:\n  - id: A\n    trials:\n      - {NEW}"),
    ],
)
def test_an_entry_is_put_at_the_end_of_a_list_in_a_record(before: str, after: str) -> None:
    assert tried(before) == after


def taken_back(text: str, number: int = 0) -> str:
    return without_last_entry(source_of(text.encode(), "f"), "spools", number, "trials").raw.decode()


@pytest.mark.parametrize(
    "before",
    [
        "spools:\n  - id: A # x\n    trials:\n      - {mandrel: 5,\n         heated: no} # y\n\n  - id: B\n",
        "spools:\r\n- id: A\r\n  trials:\r\n  - mandrel: 5\r\n    turns: 4 # é\r\n- id: B\r\n",
        "spools:\n- {id: A, trials: [{mandrel: 5}]}",
        "spools:\n- {id: A}\n",
        "spools:\n  - id: A # x\n  - id: B",
        "spools:\n  - id: A",
        "spools:\n  - id: A\n    trials: [{mandrel: 5}]\n",
    ],
)
def test_an_entry_put_in_and_taken_back_leaves_every_byte_as_it_was(before: str) -> None:
    assert taken_back(tried(before)) == before


@pytest.mark.parametrize(
    ("before", "after"),
    [
        (
            "spools:\n- id: A\n  # rod 7\n  trials: # our own\n  # hot\n  - {mandrel: 5, # one\n     turns: 4} # two\n",
            "spools:\n- id: A\n  # rod 7\n  # our own\n  # hot\n  # one\n  # two\n",
        ),
        (
            "spools:\n- id: A\n  trials:\n  - {mandrel: 5}\n  - mandrel: 6 # '#6'\n    turns: 4\n  note: '# no'\n",
            "spools:\n- id: A\n  trials:\n  - {mandrel: 5}\n  # '#6'\n  note: '# no'\n",
        ),
        ("spools:\n- {trials: [{mandrel: 5}, {mandrel: 6}], id: A}", "spools:\n- {trials: [{mandrel: 5}], id: A}"),
        ("spools:\n- id: A\n  trials: [{mandrel: 5}] # x", "spools:\n- id: A\n  # x"),
    ],
)
def test_an_entry_that_is_taken_back_leaves_its_comments(before: str, after: str) -> None:
    assert taken_back(before) == after


@pytest.mark.parametrize(
    ("before", "line", "changed"),
    [
        ("spools:\n- {id: A, trials: [{mandrel: 5}]}", 2, ("{mandrel: 5}",)),
        ("spools:\n- {id: A, trials: [{mandrel: 5}, {mandrel: 6}], note: x}", 2, ("{mandrel: 6}",)),
        (
            "spools:\n- {id: A,\n   trials: [{mandrel: 5},\n     {mandrel: 6,\n      turns: 4}]}",
            4,
            ("{mandrel: 6,", "      turns: 4}"),
        ),
        ("spools:\n- id: A\n  trials: [{mandrel: 5}]\n", 3, ("  trials: [{mandrel: 5}]",)),
    ],
)
def test_what_was_taken_back_is_shown_without_what_stood_before_it(
    before: str, line: int, changed: tuple[str, ...]
) -> None:
    edited = without_last_entry(source_of(before.encode(), "f"), "spools", 0, "trials")
    assert (edited.line, edited.changed) == (line, changed)


@pytest.mark.parametrize(
    "before",
    [
        "spools:\n- trials:\n  - {mandrel: 5}\n  id: A\n",
        "spools:\n- {trials: [{mandrel: 5}], id: A}",
        "spools:\n- id: A\n  trials: [{mandrel: 5}, # lost\n    {mandrel: 6}]\n",
        "spools:\n- id: A\n  trials:\n  - mandrel: 5\n    on: steel\n      rod\n",
    ],
)
def test_an_entry_that_cannot_be_taken_back_safely_stays(before: str) -> None:
    with pytest.raises(Mistakes) as mistakes:
        taken_back(before)
    assert told(mistakes.value.findings)[0].endswith(UNSURE)


@pytest.mark.parametrize(
    "before",
    [
        "spools:\n- id: A\n  trials:\n  -  # a-b\n    mandrel: 5\n",
        "spools:\n- id: A\n  trials:\n  - mandrel: |\n      5\n",
        "spools:\n- id: A\n  trials:\n  - mandrel: 5\n    on: steel\n      rod\n",
    ],
)
def test_a_list_that_is_written_in_a_way_of_its_own_is_left_alone(before: str) -> None:
    with pytest.raises(Mistakes) as mistakes:
        tried(before)
    assert told(mistakes.value.findings)[0].endswith(UNSURE)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("springs:\n  - id: A\n", "springs:\n  - id: A\n  - id: N\n    place: 'a: b'\n"),
        ("springs:\r\n-   id: A", "springs:\r\n-   id: A\r\n-   id: N\r\n    place: 'a: b'"),
        ("springs:\n- id: A\n\n- id: B\n# end\n", "springs:\n- id: A\n\n- id: B\n# end\n\n- id: N\n  place: 'a: b'\n"),
        ("springs:\n  - {id: A}\n", "springs:\n  - {id: A}\n  - {id: N, place: 'a: b'}\n"),
        ("springs: []\n", "springs: [{id: N, place: 'a: b'}]\n"),
        ("springs: [\n  {id: A}, # ]\n]\n", "springs: [\n  {id: A}, {id: N, place: 'a: b'}, # ]\n]\n"),
    ],
)
def test_a_record_is_added_at_the_end_as_the_last_one_is_written(before: str, after: str) -> None:
    assert added(before) == after


def test_what_cannot_be_done_safely_is_refused() -> None:
    """A document's end mark stands behind the list; the last note would get a line break that it does not have."""
    for text in ("springs:\n- id: A\n...\n", "springs:\n- id: A\n  note: |\n    x"):
        with pytest.raises(Mistakes) as raised:
            added(text)
        assert told(raised.value.findings) == [f"{2 if text[9] == '-' else 1}:1: {UNSURE}"]
    with pytest.raises(Mistakes) as raised:
        changed("springs:\n- note: |\n    x\n", "on_hand", "2")
    assert told(raised.value.findings) == [f"2:3: {UNSURE}"]


def test_a_change_tells_the_line_it_is_on() -> None:
    edited = with_value(source_of(b"springs:\r\n- id: A\r\n\r\n- id: B # x\r\n", "f"), "springs", 1, "on_hand", "2")
    assert (edited.line, edited.changed) == (5, ("  on_hand: 2",))
    edited = with_entry(source_of(b"springs:\n- id: A\n\n- id: B\n", "f"), "springs", {"id": "C", "note": "x"})
    assert (edited.line, edited.changed) == (6, ("- id: C", "  note: x"))


@settings(deadline=None, derandomize=True)
@given(text=st.text(st.characters(exclude_categories=["Cs"])))
def test_any_text_is_written_so_that_it_is_read_as_itself(text: str) -> None:
    for frame in ("springs:\n- id: %s\n  b: c\n", "springs: [{id: %s, b: c}]"):
        document, findings = parse(frame % as_scalar(text), "f")
        assert not findings
        assert document is not None
        assert document.value == {"springs": [{"id": text, "b": "c"}]}
