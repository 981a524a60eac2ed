"""A file is replaced whole or not at all: whatever goes wrong leaves it as it was, and nothing beside it."""

import errno
import os
import resource
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from sourcing.files.findings import Mistakes
from sourcing.files.replacing import change_file
from tests.files.told import told

LARGE = 1 << 16
TOO_LARGE = f"""
import sys, types
from sourcing.files.findings import Mistakes
from sourcing.files.replacing import change_file
try:
    change_file(sys.argv[1], lambda raw: types.SimpleNamespace(raw=b"x" * {LARGE}))
except Mistakes as mistakes:
    print(mistakes.findings[0].found)
"""


@dataclass
class Change:
    raw: bytes


def new(raw: bytes) -> Change:
    return Change(raw + b"new")


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "folder" / "drawer.yaml"
    path.parent.mkdir()
    path.write_bytes(b"old")
    return path


def refused(file: Path) -> list[str]:
    """What is told of a change that is refused; the file is as it was, and nothing lies beside it."""
    before, names = file.read_bytes(), os.listdir(file.parent)
    with pytest.raises(Mistakes) as raised:
        change_file(str(file), new)
    assert file.read_bytes() == before
    assert os.listdir(file.parent) == names
    return told(raised.value.findings)


def test_a_file_is_changed_and_nothing_is_left_beside_it(file: Path) -> None:
    assert change_file(str(file), new).raw == b"oldnew"
    assert file.read_bytes() == b"oldnew"
    assert os.listdir(file.parent) == ["drawer.yaml"]


@pytest.mark.parametrize("mode", [0o640, 0o600, 0o664, 0o755])
def test_its_permissions_are_kept(file: Path, mode: int) -> None:
    file.chmod(mode)
    change_file(str(file), new)
    assert file.stat().st_mode & 0o7777 == mode


def test_its_owner_is_kept(file: Path) -> None:
    """Only root gives files to others; anybody else gives one to another of their own groups, where there is one."""
    owner = (12345, 12346) if os.geteuid() == 0 else (os.geteuid(), os.getgroups()[-1])
    os.chown(file, *owner)
    change_file(str(file), new)
    assert (file.stat().st_uid, file.stat().st_gid) == owner


@pytest.mark.parametrize("relative", [True, False])
def test_a_symbolic_link_stays_and_what_it_leads_to_is_changed(file: Path, tmp_path: Path, relative: bool) -> None:
    link = tmp_path / "link.yaml"
    link.symlink_to("folder/drawer.yaml" if relative else file)
    change_file(str(link), new)
    assert link.is_symlink()
    assert file.read_bytes() == b"oldnew"
    assert sorted(os.listdir(tmp_path)) == ["folder", "link.yaml"]


def test_a_link_and_the_file_it_leads_to_have_one_lock(file: Path, tmp_path: Path) -> None:
    (tmp_path / "link.yaml").symlink_to(file)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sourcing.files.lock.LONGEST_WAIT_S", 0.0)

        def meanwhile(raw: bytes) -> Change:
            assert "is changing it" in refused_by_lock(tmp_path / "link.yaml")
            return Change(b"new")

        change_file(str(file), meanwhile)
    assert file.read_bytes() == b"new"


def refused_by_lock(file: Path) -> str:
    with pytest.raises(Mistakes) as raised:
        change_file(str(file), new)
    return told(raised.value.findings)[0]


@pytest.mark.parametrize("name", ["folder/drawer.yaml", "folder"])
def test_a_read_only_file_or_folder_is_left_alone(file: Path, tmp_path: Path, name: str) -> None:
    """Also where whoever runs it may write everywhere: what is marked read-only was meant to stay."""
    path, mode = tmp_path / name, (tmp_path / name).stat().st_mode
    path.chmod(mode & ~0o222)
    try:
        assert refused(file) == ["you may not write it or its folder; expected leave to write it; nothing was changed"]
    finally:
        path.chmod(mode)


def test_a_file_that_somebody_else_changed_meanwhile_is_left_as_they_made_it(file: Path) -> None:
    def slow(raw: bytes) -> Change:
        file.write_bytes(b"theirs")
        return Change(b"ours")

    with pytest.raises(Mistakes) as raised:
        change_file(str(file), slow)
    assert told(raised.value.findings) == ["somebody changed it meanwhile; expected a second try; nothing was changed"]
    assert file.read_bytes() == b"theirs"
    assert os.listdir(file.parent) == ["drawer.yaml"]


def test_a_file_that_somebody_else_deleted_meanwhile_stays_deleted(file: Path) -> None:
    def slow(raw: bytes) -> Change:
        file.unlink()
        return Change(b"ours")

    with pytest.raises(Mistakes):
        change_file(str(file), slow)
    assert os.listdir(file.parent) == []


@pytest.mark.parametrize("step", ["fsync", "replace", "open", "fchmod"])
def test_a_disk_that_refuses_at_any_step_leaves_the_file_as_it_was(
    file: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    plain_open = os.open

    def full(*words: object, **more: object) -> int:
        if step == "open" and not str(words[0]).endswith(".new"):
            return plain_open(*words, **more)  # type: ignore[arg-type]
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, step, full)
    assert refused(file) == [
        "it cannot be written (no space left on device); expected a disk that takes it; nothing was changed"
    ]


def test_a_disk_that_is_full_half_way_leaves_the_file_as_it_was(file: Path) -> None:
    """The real thing: the operating system lets no file grow beyond half of what is to be written."""
    ran = subprocess.run(
        [sys.executable, "-c", TOO_LARGE, str(file)],
        capture_output=True,
        text=True,
        check=True,
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (LARGE // 2, LARGE // 2)),
    )
    assert ran.stdout == "it cannot be written (file too large)\n"
    assert file.read_bytes() == b"old"
    assert os.listdir(file.parent) == ["drawer.yaml"]


def test_a_change_that_fails_leaves_nothing_behind(file: Path) -> None:
    def fails(raw: bytes) -> Change:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        change_file(str(file), fails)
    assert file.read_bytes() == b"old"
    assert os.listdir(file.parent) == ["drawer.yaml"]


def test_what_a_killed_process_left_behind_is_cleared_away(file: Path) -> None:
    for name in (".drawer.yaml.new", ".drawer.yaml.lock"):
        (file.parent / name).write_bytes(b"half of")
    change_file(str(file), new)
    assert file.read_bytes() == b"oldnew"
    assert os.listdir(file.parent) == ["drawer.yaml"]


def test_a_disk_that_cannot_flush_a_folder_is_no_mistake(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The change is made by then."""
    plain = os.fsync
    monkeypatch.setattr(os, "fsync", lambda fd: plain(fd) if os.path.isfile(f"/proc/self/fd/{fd}") else fail(fd))
    change_file(str(file), new)
    assert file.read_bytes() == b"oldnew"


def fail(descriptor: int) -> None:
    raise OSError(errno.EINVAL, os.strerror(errno.EINVAL))


def test_what_is_no_plain_file_is_left_alone(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.yaml"
    os.mkfifo(pipe)
    with pytest.raises(Mistakes) as raised:
        change_file(str(pipe), new)
    assert told(raised.value.findings) == [
        "it cannot be written (no plain file); expected a disk that takes it; nothing was changed"
    ]
    assert os.listdir(tmp_path) == ["pipe.yaml"]
