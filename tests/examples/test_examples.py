"""Every job gets, from the command line, the verdict that its story tells, in the words that the story shows."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[2]
JOBS = sorted(path.parent for path in (ROOT / "examples").glob("*/need.yaml"))
STARTER = ROOT / "sourcing" / "starter"
EVERY_JOB = pytest.mark.parametrize("job", JOBS, ids=[job.name for job in JOBS])

NOTHING_RECOMMENDED = 3


@cache
def run(*words: str, folder: Path = ROOT) -> subprocess.CompletedProcess[str]:
    """`springwright` with these words, in this folder."""
    return subprocess.run(
        [sys.executable, "-m", "sourcing", *words], cwd=folder, capture_output=True, encoding="utf-8", check=False
    )


def answer(*words: str, folder: Path = ROOT) -> dict[str, Any]:
    """The JSON that `springwright source` gives, and nothing beside it."""
    ran = run("source", *words, "--json", folder=folder)
    assert ran.stderr == ""
    return json.loads(ran.stdout)


def need_of(job: Path) -> str:
    return str(job.relative_to(ROOT) / "need.yaml")


def story_of(job: Path) -> str:
    return (job / "README.md").read_text("utf-8")


def told_verdict(job: Path) -> tuple[str, str | None]:
    """Option and id of the one line "Verdict: drawer, T-17" of a story."""
    ((option, mark),) = re.findall(r"^Verdict: (\w+)(?:, (\S+))?$", story_of(job), re.MULTILINE)
    return option, mark or None


def blocks(job: Path, language: str) -> list[str]:
    """The fenced blocks of a language in a story."""
    return re.findall(rf"^```{language}\n(.*?)^```$", story_of(job), re.MULTILINE | re.DOTALL)


def in_one_line(text: str) -> str:
    return " ".join(text.split())


@EVERY_JOB
def test_the_verdict_of_a_job_is_the_one_its_story_tells(job: Path) -> None:
    verdict = answer(need_of(job))["verdict"]
    assert (verdict["option"], verdict["id"]) == told_verdict(job)


@EVERY_JOB
def test_a_job_ends_with_status_3_where_nothing_can_be_recommended_and_with_0_elsewhere(job: Path) -> None:
    expected = NOTHING_RECOMMENDED if told_verdict(job)[0] == "none" else 0
    assert run("source", need_of(job)).returncode == expected


@EVERY_JOB
def test_what_a_story_shows_of_the_sheet_stands_in_the_sheet_but_for_where_its_lines_break(job: Path) -> None:
    printed = in_one_line(run("source", need_of(job)).stdout)
    shown = [in_one_line(part) for block in blocks(job, "text") for part in block.split("\n\n")]
    assert len(shown) >= 2
    assert [part for part in shown if part not in printed] == []


@EVERY_JOB
def test_the_commands_of_a_story_are_about_that_job(job: Path) -> None:
    (block,) = blocks(job, "sh")
    first, *more = block.splitlines()
    assert first == f"springwright source {need_of(job)}"
    assert more in ([], [f"springwright wind {need_of(job)}"])


def test_drawer_adapted_bought_wound_and_none_are_each_the_verdict_of_some_job() -> None:
    assert {told_verdict(job)[0] for job in JOBS} == {"drawer", "adapted", "bought", "wound", "none"}


def test_of_the_jobs_without_a_recommendation_one_is_guarded_and_one_is_not() -> None:
    guarded = {job.name: is_guarded(answer(need_of(job))) for job in JOBS if told_verdict(job)[0] == "none"}
    assert guarded == {"boiler-relief": True, "book-press": False}


def is_guarded(document: dict[str, Any]) -> bool:
    return any("guarded" in reason["rule"] for reason in document["verdict"]["because"])


def test_a_guarded_job_gets_no_winding_plan() -> None:
    assert answer("examples/boiler-relief/need.yaml")["winding"] is None


def with_bench(tmp_path: Path, old: str, new: str) -> str:
    """A copy of the catalogue with one line of its bench.yaml changed."""
    catalog = tmp_path / "catalog"
    shutil.copytree(ROOT / "catalog", catalog)
    text = (catalog / "bench.yaml").read_text("utf-8")
    assert text.count(old) == 1
    (catalog / "bench.yaml").write_text(text.replace(old, new), "utf-8")
    return str(catalog)


def test_the_book_press_is_ordered_once_the_spring_maker_of_the_bench_is_no_comment_any_more(tmp_path: Path) -> None:
    catalog = with_bench(tmp_path, "# spring_maker:", "spring_maker:")
    assert answer("examples/book-press/need.yaml", "--catalog", catalog)["verdict"]["option"] == "ordered"


def test_the_treadle_foot_is_wound_where_bench_hours_count_nothing(tmp_path: Path) -> None:
    catalog = with_bench(tmp_path, "hour_value: 6 EUR", "hour_value: 0 EUR")
    assert answer("examples/treadle-foot/need.yaml", "--catalog", catalog)["verdict"]["option"] == "wound"


def test_a_job_is_printed_in_inches_and_pounds_where_the_bench_says_inch(tmp_path: Path) -> None:
    catalog = with_bench(tmp_path, "units: mm", "units: inch")
    printed = run("source", "examples/treadle-foot/need.yaml", "--catalog", catalog).stdout
    assert "lbf" in printed
    assert " mm" not in printed


def test_a_need_in_inches_is_told_back_in_millimetres() -> None:
    pocket = answer("examples/treadle-foot/need.yaml")["need"]["pocket"]
    assert json.dumps(pocket).count("12.7") == 1
    assert json.dumps(pocket).count("6.35") == 1


def test_a_new_bench_folder_answers_its_own_need_at_once(tmp_path: Path) -> None:
    bench = tmp_path / "bench"
    assert run("init", str(bench)).returncode == 0
    verdict = answer("need.yaml", folder=bench)["verdict"]
    assert (verdict["option"], verdict["id"]) == ("drawer", "latch")


def test_the_files_of_a_new_bench_folder_and_the_catalogue_are_read_without_a_doubt() -> None:
    for catalog in (ROOT / "catalog", STARTER / "catalog"):
        ran = run("source", "examples/punch-return/need.yaml", "--catalog", str(catalog))
        assert ran.stderr == ""


@EVERY_JOB
@pytest.mark.parametrize("command", ["source", "wind"])
def test_no_line_of_a_sheet_is_wider_than_eighty_columns(job: Path, command: str) -> None:
    assert max(map(len, run(command, need_of(job)).stdout.split("\n"))) <= 80
