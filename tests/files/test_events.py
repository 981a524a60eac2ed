"""YAML as a person writes it: plain values with their places, and what is refused."""

import gc
from textwrap import dedent

import pytest
import yaml

from sourcing.files.document import Document, Value
from sourcing.files.events import collector_off, parse
from sourcing.files.findings import Place
from tests.files.told import told


def document(text: str) -> Document:
    found, findings = parse(text, "f")
    assert not findings
    assert found is not None
    return found


def value(text: str) -> object:
    return document(text).value


def mistakes(text: str) -> list[str]:
    return told(parse(dedent(text).lstrip("\n"), "f")[1])


@pytest.mark.parametrize(
    "text", ["010", "0x10", "1:30", "1_000", "yes", ".inf", "~", "null", "2026-03-02", "1,5", "1e6", "=", "<<"]
)
def test_a_scalar_is_its_own_text_and_never_a_guess_at_its_type(text: str) -> None:
    assert value(f"id: {text}") == {"id": text}


def test_a_quoted_scalar_is_a_text_like_any_other() -> None:
    assert value("""{a: "010", 'b': '', c: ">= 5 N", d: "x\\ty"}""") == {
        "a": "010",
        "b": "",
        "c": ">= 5 N",
        "d": "x\ty",
    }


def test_lists_and_mappings_in_both_ways_of_writing_are_plain_values() -> None:
    text = "springs:\n  - id: T-1\n    tags: [a, b]\n  - {id: T-2}\nnote: |\n  two\n  lines\n"
    assert value(text) == {"springs": [{"id": "T-1", "tags": ["a", "b"]}, {"id": "T-2"}], "note": "two\nlines\n"}


def test_comments_and_the_sign_of_a_document_are_no_values() -> None:
    assert value("# a need\n---\njob: x  # mine\n") == {"job": "x"}


def test_a_file_of_comments_holds_nothing() -> None:
    assert value("# nothing yet\n") is None


@pytest.mark.parametrize("line_break", ["\n", "\r\n", "\r"])
def test_lines_are_counted_whatever_ends_them(line_break: str) -> None:
    read = document(line_break.join(["# one", "a: x", "", "b: y"]))
    assert read.place(_mapping(read), "b") == Place("f", 4, 4)


def test_columns_count_characters() -> None:
    read = document("{é: 'ü', 😀: x}")
    assert (read.key_place(_mapping(read), "😀"), read.place(_mapping(read), "😀")) == (
        Place("f", 1, 10),
        Place("f", 1, 13),
    )


def test_every_key_and_every_value_has_its_place() -> None:
    read = document("working:\n  - {length: 24 mm, force: 9 N}\n  - length: 14 mm\n")
    value = _mapping(read)
    assert read.key_place(value, "working") == Place("f", 1, 1)
    assert read.place_of(value, ["working", 0]) == Place("f", 2, 5)
    assert read.place_of(value, ["working", 0, "force"]) == Place("f", 2, 28)
    assert read.place_of(value, ["working", 1, "length"]) == Place("f", 3, 13)
    assert read.place_of(value, ["working", 1, "force"]) == Place("f", 3, 5)


def _mapping(read: Document) -> dict[str, Value]:
    assert isinstance(read.value, dict)
    return read.value


def test_a_key_that_stands_twice_is_told_with_both_lines_and_the_first_holds() -> None:
    read, findings = parse("rate: 1\nprice: 2\nrate: {a: b}\n", "f")
    assert told(findings) == ["3:1: “rate” stands on line 1 already; expected each key once"]
    assert read is not None
    assert read.value == {"rate": "1", "price": "2"}


def test_an_anchor_and_an_alias_are_told() -> None:
    assert mistakes("a: &x 1\nb: *x\nc: &y [1]\n") == [
        "1:4: an anchor (&x); expected the value alone, or quotes round a text that begins with &",
        "2:4: a reference (*x); expected the value itself, or quotes round a text that begins with *",
        "3:4: an anchor (&y); expected the value alone, or quotes round a text that begins with &",
    ]


def test_a_tag_is_told() -> None:
    assert mistakes("a: !!int 1\nb: !part {c: d}\n") == [
        "1:4: a tag (!!int); expected the value alone, or quotes round a text that begins with !",
        "2:4: a tag (!part); expected the value alone, or quotes round a text that begins with !",
    ]


def test_a_second_document_is_told() -> None:
    assert mistakes("a: 1\n---\nb: 2\n") == ["2:1: a second document; expected one document in a file"]


def test_a_key_is_a_word() -> None:
    assert mistakes("[a]: b\n? {c: d}\n: e\n'': f\n*x : g\n") == [
        "1:1: a list or a mapping as a key; expected a word",
        "2:3: a list or a mapping as a key; expected a word",
        "4:1: no key; expected a word before the colon",
        "5:1: a reference (*x); expected the value itself, or quotes round a text that begins with *",
    ]


def test_an_empty_place_is_told() -> None:
    assert mistakes("rate:\nworking:\n  -\n") == [
        "1:6: nothing after rate:; expected a value, or the line left out",
        "3:4: nothing; expected a value, or the line left out",
    ]


def test_a_text_that_is_taken_for_a_comment_is_told() -> None:
    assert mistakes("id: #4\n") == [
        '1:4: nothing after id: but a comment; expected quotes round a text that begins with #; did you mean "#4"?'
    ]


def test_a_decimal_comma_that_parts_a_value_in_two_is_told_with_the_point() -> None:
    assert mistakes("{length: 1,5 mm, force: 9 N}\n") == [
        "1:10: 1,5 mm has a comma as decimal sign; expected a decimal point; did you mean 1.5 mm?"
    ]


def test_a_colon_without_its_space_is_told() -> None:
    assert mistakes("{length:24 mm}\n") == [
        "1:2: length:24 mm; expected a space after the colon; did you mean length: 24 mm?"
    ]


def test_an_empty_file_is_told() -> None:
    assert mistakes("") == ["an empty file; expected keys and values"]
    assert mistakes(" \n\n") == ["an empty file; expected keys and values"]


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "a:\n"])
def test_deep_nesting_is_told_however_deep_it_is(opening: str) -> None:
    text = "".join(" " * depth + opening for depth in range(3000)) if opening == "a:\n" else opening * 100_000
    (finding,) = parse(text, "f")[1]
    assert finding.found == "more than 20 lists or mappings one within the other"
    assert finding.expected == "keys and values that are not so deeply nested"


QUOTES = "expected quotes round it"
A_TAB = "a tab; expected spaces: a line is indented with spaces only"
A_LINE = "expected a key, a colon, a space and a value, as in  kind: compression"
SYNTAX = {
    "a tab for indentation": ("pocket:\n\tbore: 11 mm\n", f"2:1: {A_TAB}"),
    "a tab after spaces": ("pocket:\n  bore: 1\n \trod: 6\n", f"3:2: {A_TAB}"),
    "a tab in a long text": ("note: |\n\tx\n", f"2:1: {A_TAB}"),
    "a bound": ("force: >= 5 N\n", f'1:8: a text that begins with >; {QUOTES}; did you mean ">= 5 N"?'),
    "a bound in braces": ("{a: >= 5 N, b: c}\n", f'1:5: a text that begins with >; {QUOTES}; did you mean ">= 5 N"?'),
    "an at sign": ("place: @home # mine\n", f'1:8: a text that begins with @; {QUOTES}; did you mean "@home"?'),
    "a percent sign": ("note: %5\n", f'1:7: a text that begins with %; {QUOTES}; did you mean "%5"?'),
    "an ampersand alone": ("note: & co\n", f"1:7: a text that begins with &; {QUOTES}"),
    "an asterisk alone": ("note: * co\n", f"1:7: a text that begins with *; {QUOTES}"),
    "an unknown tag": ("note: !a!b c\n", f"1:7: a text that begins with !; {QUOTES}"),
    "two colons": (
        "note: see: there\n",
        "1:10: a colon too many; expected one key a line; a text with a colon in quotes",
    ),
    "a line that reads on": (
        "job: x\n  kind: y\n",
        "2:7: a line that reads on from the one above; "
        "expected a colon and a space after each key, and one indent for all keys",
    ),
    "no colon": ("job: x\nkind\n", f"2:1: a line without a colon; {A_LINE}"),
    "a list after a key": ("a: - b\n", "1:4: a - after a key; expected the list's first - on a line of its own"),
    "a list that is left": (
        "- a\nb: c\n",
        "2:1: a line outside the list above it; expected the indent of the list's other lines",
    ),
    "an open bracket": ("a: [1, 2\nb: 3\n", "1:4: a [ that is not closed; expected a ] at the end of the list"),
    "an open brace": ("a: {x: 1\nb: 3\n", "1:4: a { that is not closed; expected a } at the end of it"),
    "a comma forgotten": (
        "a: {x: 1 y: 2}\n",
        "1:11: two keys without a comma between them; expected a comma after each value in { }",
    ),
    "a value forgotten in braces": (
        "a: {x: 1, y:}\n",
        "1:12: a key with nothing after its colon; expected a space and a value after the colon",
    ),
    "open quotes": ("a: 'x\nb: y\n", "1:4: a text whose quotes are not closed; expected a second quotation mark"),
    "quotes open at a document's end": (
        "a: 'x\n---\n",
        "1:4: a text whose quotes are not closed; expected a second quotation mark",
    ),
    "a text after quotes": (
        "a: 'it's'\n",
        "1:8: text after a closing quotation mark; expected nothing after it, or other quotes round the whole",
    ),
    "a backslash": ('a: "b\\q"\n', "1:6: a backslash in double quotes; expected single quotes, or two backslashes"),
    "a backslash x": ('a: "\\xzz"\n', "1:7: a backslash in double quotes; expected single quotes, or two backslashes"),
    "another indent": (
        "a:\n  b: c\n d: e\n",
        "3:2: a line with another indent; expected a key right under the first letter of those above it",
    ),
    "a comma alone": ("a: [1,,2]\n", "1:7: , where a value belongs; expected a value"),
    "a closing brace alone": ("a: }\n", "1:4: } where a value belongs; expected a value"),
    "text after the end": (
        "a: b\n...\nc",
        "3:1: more after the end of the document; expected one document in a file",
    ),
    "another version": ("%YAML 3.0\n---\na: b\n", f"1:1: a line that begins with %; {A_LINE}"),
    "a directive": ("%\na: b\n", f"1:2: a line that begins with %; {A_LINE}"),
}


@pytest.mark.parametrize(("text", "message"), SYNTAX.values(), ids=SYNTAX)
def test_what_is_no_yaml_is_told_in_plain_words(text: str, message: str) -> None:
    assert told(parse(text, "f")[1]) == [message]


def test_mistakes_before_the_one_that_stops_the_parser_are_told_too() -> None:
    assert len(mistakes("a: 1\na: 2\nb: @x\n")) == 2


def test_the_collector_is_on_again_after_a_file_was_read_and_after_a_mistake() -> None:
    assert gc.isenabled()
    with collector_off():
        assert not gc.isenabled()
    assert gc.isenabled()
    parse("a: @x", "f")
    assert gc.isenabled()


def test_the_parser_in_python_reads_the_same_where_the_one_in_c_is_missing(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "springs:\n  - {id: 010, é: 'x'}\n  - id: >-\n      two\n      words\n"
    in_c = document(text)
    monkeypatch.delattr(yaml, "CSafeLoader")
    in_python = document(text)
    assert in_python.value == in_c.value
    assert sorted(map(list, in_python.marks.values())) == sorted(map(list, in_c.marks.values()))
