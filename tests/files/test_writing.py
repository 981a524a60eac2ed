"""A new file is written whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from sourcing.files.findings import Mistakes
from sourcing.files.writing import write_file
from tests.files.told import told


def refused(file: Path) -> str:
    names = sorted(os.listdir(file.parent)) if file.parent.is_dir() else []
    with pytest.raises(Mistakes) as raised:
        write_file(str(file), b"new")
    if names:
        assert sorted(os.listdir(file.parent)) == names
    (line,) = told(raised.value.findings)
    return line


def test_a_file_is_written_and_nothing_stands_beside_it(tmp_path: Path) -> None:
    write_file(str(tmp_path / "out.stl"), b"new")
    assert (tmp_path / "out.stl").read_bytes() == b"new"
    assert os.listdir(tmp_path) == ["out.stl"]


def test_a_file_that_has_the_name_is_replaced_and_keeps_its_permissions(tmp_path: Path) -> None:
    file = tmp_path / "out.stl"
    file.write_bytes(b"old")
    file.chmod(0o640)
    write_file(str(file), b"new")
    assert file.read_bytes() == b"new"
    assert file.stat().st_mode & 0o777 == 0o640


def test_a_new_file_may_be_read_as_the_user_s_mask_lets(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        write_file(str(tmp_path / "out.stl"), b"new")
    finally:
        os.umask(before)
    assert (tmp_path / "out.stl").stat().st_mode & 0o777 == 0o640


def test_a_link_stays_and_the_file_it_leads_to_is_written(tmp_path: Path) -> None:
    (tmp_path / "link.stl").symlink_to(tmp_path / "out.stl")
    write_file(str(tmp_path / "link.stl"), b"new")
    assert (tmp_path / "link.stl").is_symlink()
    assert (tmp_path / "out.stl").read_bytes() == b"new"


def test_a_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "out.stl").mkdir()
    assert "a folder; expected a name for a new file; nothing was written" in refused(tmp_path / "out.stl")


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    assert "no folder" in refused(tmp_path / "missing" / "out.stl")


def test_a_folder_without_leave_to_write_is_told(tmp_path: Path) -> None:
    tmp_path.chmod(0o555)
    try:
        assert "you may not write it or its folder" in refused(tmp_path / "out.stl")
    finally:
        tmp_path.chmod(0o755)


def test_a_file_without_leave_to_write_is_kept(tmp_path: Path) -> None:
    file = tmp_path / "out.stl"
    file.write_bytes(b"old")
    file.chmod(0o444)
    assert "you may not write it or its folder" in refused(file)
    assert file.read_bytes() == b"old"


def test_a_device_is_no_place_for_a_file() -> None:
    with pytest.raises(Mistakes) as raised:
        write_file("/dev/null", b"new")
    assert "cannot be written" in raised.value.findings[0].found


def test_what_fails_half_way_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    assert "no space left" in refused(tmp_path / "out.stl")
    assert os.listdir(tmp_path) == []
