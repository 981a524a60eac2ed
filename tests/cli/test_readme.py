"""The README keeps what it promises: two commands, one line each, and every command it names exists."""

import re
from pathlib import Path
from textwrap import dedent

import pytest

from sourcing.cli.app import app
from sourcing.need.kinds import KINDS

TOP = Path(__file__).parents[2]
README = (TOP / "README.md").read_text("utf-8")
SH_BLOCKS = re.findall(r"^```sh\n(.*?)^```", README, re.MULTILINE | re.DOTALL)


def test_it_opens_with_the_job_before_any_command():
    first = README.index("```sh")
    assert "coil spring that broke, sagged or went missing" in README[:first]


def test_the_first_two_sh_blocks_are_one_line_each():
    assert [len(block.strip().split("\n")) for block in SH_BLOCKS[:2]] == [1, 1]


def test_the_first_command_shows_the_main_job(run, monkeypatch):
    """What the command runs after setting up is run here."""
    words = SH_BLOCKS[0].strip().split(" && ")[-1].split()
    assert words[0] == ".venv/bin/springwright"
    monkeypatch.chdir(TOP)
    ran = run(*words[1:])
    assert ran.status == 0
    assert ran.out.startswith("punch-return")


def test_the_second_command_runs_the_tests():
    assert SH_BLOCKS[1].strip().endswith(".venv/bin/pytest")


def test_every_command_that_it_names_has_help(run):
    named = set(re.findall(r"`springwright (\w+)", README))
    commands = [command.name for command in app.registered_commands]
    assert named == {*commands, *(group.name for group in app.registered_groups)}
    for name in named:
        ran = run(name, "--help")
        assert ran.status == 0
        assert f"Example: springwright {name}" in ran.out


NEEDS = [dedent(need) for need in re.findall(r"^ *```yaml\n(.*?)^ *```", README, re.MULTILINE | re.DOTALL)]


@pytest.mark.parametrize("need", NEEDS, ids=[need.split("\n")[0] for need in NEEDS])
def test_a_need_that_it_shows_is_a_need(need, run, monkeypatch, tmp_path):
    (tmp_path / "need.yaml").write_text(need, "utf-8")
    monkeypatch.chdir(TOP)
    assert run("source", tmp_path / "need.yaml").status == 0


def test_it_shows_or_names_a_need_of_every_kind():
    named = [
        (TOP / folder / "need.yaml").read_text("utf-8") for folder in re.findall(r"\]\((examples/[\w-]+)\)", README)
    ]
    kinds = {kind for need in (*NEEDS, *named) for kind in re.findall(r"^kind: (\w+)", need, re.MULTILINE)}
    assert kinds == set(KINDS)
