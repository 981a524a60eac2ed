"""A file that gives no text is told in words: missing, a folder, unreadable, binary, in another encoding."""

import builtins
import errno
import os
from pathlib import Path
from typing import Any

import pytest

from sourcing.files.disk import read_text
from tests.files.told import mistakes_of, told


def told_of(path: Path) -> list[str]:
    return told(mistakes_of(lambda path: read_text(str(path)), path))


def test_a_missing_file_is_told_with_the_nearest_name_in_its_folder(tmp_path: Path) -> None:
    (tmp_path / "need.yaml").touch()
    (tmp_path / "bench.yaml").touch()
    expected = f"nothing of that name; expected a file; did you mean {tmp_path / 'need.yaml'}?"
    assert told_of(tmp_path / "ned.yaml") == [expected]


def test_a_missing_file_is_named_as_the_user_gave_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("need.yaml").touch()
    (finding,) = mistakes_of(lambda _: read_text("ned.yaml"), tmp_path)
    assert (finding.place.file, finding.suggestions) == ("ned.yaml", ("need.yaml",))


def test_a_missing_folder_is_told_with_the_nearest_name_beside_it(tmp_path: Path) -> None:
    (tmp_path / "examples").mkdir()
    assert told_of(tmp_path / "exmples" / "need.yaml") == [
        f"no folder {tmp_path / 'exmples'}; expected a file in a folder that is there; "
        f"did you mean {tmp_path / 'examples'}?"
    ]


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    assert told_of(tmp_path) == ["a folder; expected a file"]


def test_a_path_through_a_file_is_no_path(tmp_path: Path) -> None:
    (tmp_path / "need.yaml").touch()
    assert told_of(tmp_path / "need.yaml" / "x") == [
        f"no folder {tmp_path / 'need.yaml'}; expected a file in a folder that is there"
    ]


def test_a_device_is_no_file() -> None:
    assert told_of(Path("/dev/null")) == ["it cannot be read (a device, not a file); expected a file that can be read"]


def test_a_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The tests may run as somebody who may read everything, so the refusal of the disk is played."""
    path = tmp_path / "need.yaml"
    path.touch()
    plain_open = builtins.open

    def refusing(file: Any, *rest: Any, **more: Any) -> Any:
        if str(file) == str(path):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), file)
        return plain_open(file, *rest, **more)

    monkeypatch.setattr(builtins, "open", refusing)
    assert told_of(path) == ["you may not read it; expected leave to read it; look at who owns it and its permissions"]


def test_a_name_that_no_disk_takes(tmp_path: Path) -> None:
    assert told_of(tmp_path / ("x" * 300)) == [
        "it cannot be read (file name too long); expected a file that can be read"
    ]
    assert told_of(Path("a\0b")) == ["it cannot be read (that is no name for a file); expected a file that can be read"]


def test_a_file_of_other_bytes_is_no_text(tmp_path: Path) -> None:
    path = tmp_path / "need.yaml"
    path.write_bytes(b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR")
    assert told_of(path) == ["bytes that are not text; expected a text file, in UTF-8"]


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le-sig", "utf-16-be-sig"])
def test_utf_16_is_named(tmp_path: Path, encoding: str) -> None:
    path = tmp_path / "need.yaml"
    text = "\ufeffjob: x" if encoding.endswith("-sig") else "job: x"
    path.write_bytes(text.encode(encoding.removesuffix("-sig")))
    assert told_of(path) == ["text in UTF-16; expected text in UTF-8; save the file again as UTF-8"]


def test_a_byte_that_is_not_utf_8_has_a_line_and_a_column(tmp_path: Path) -> None:
    path = tmp_path / "need.yaml"
    path.write_bytes("job: é\r\nfree_length: 31 ".encode() + "±".encode("latin-1") + b" 2\n")
    assert told_of(path) == [
        "2:17: a byte that is not UTF-8 text (0xb1); expected text in UTF-8; save the file again as UTF-8"
    ]


@pytest.mark.parametrize(
    ("character", "code"), [("\x1b", "0x001b"), ("\x85", "0x0085"), ("\u2028", "0x2028"), ("\ufeff", "0xfeff")]
)
def test_a_control_character_and_a_hidden_line_break_are_refused(tmp_path: Path, character: str, code: str) -> None:
    path = tmp_path / "need.yaml"
    path.write_bytes(f"job: x\rnote: a{character}b".encode())
    assert told_of(path) == [
        f"2:8: a character that is not text ({code}); expected letters, figures and signs; delete it"
    ]


def test_a_byte_order_mark_is_no_part_of_the_text(tmp_path: Path) -> None:
    path = tmp_path / "need.yaml"
    path.write_bytes(b"\xef\xbb\xbfjob: x\r\n")
    assert read_text(str(path)) == "job: x\r\n"
