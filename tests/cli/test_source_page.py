"""`springwright source --sheet`: the verdict as a page, with the winding sheet where that is the answer."""

from __future__ import annotations

import re
from html import unescape

import pytest

from tests.cli.test_winding_page import Parts


def said(page: str) -> str:
    return " ".join(" ".join(Parts(page).words).split())


def test_the_page_leads_with_the_verdict_and_has_the_options(run, bench_folder):
    ran = run("source", "need.yaml", "--sheet", "out.html", "--json")
    assert ran.status == 0
    assert "out.html" in ran.err
    page = (bench_folder / "out.html").read_text("utf-8")
    verdict = ran.json["verdict"]
    (lead,) = re.findall('<p class="lead">(.*?)</p>', page)
    assert unescape(lead) == verdict["sentence"]
    assert all(because["why"] in said(page) for because in verdict["because"])
    assert all(change in said(page) for change in verdict["would_change"])
    assert page.count('<th scope="row">drawer</th>') == 1
    assert Parts(page).fetched == []
    assert page.index("Let the old spring down captive") < page.index('class="lead"')


def test_what_is_to_be_wound_has_its_winding_sheet_on_the_page(run, bench_folder):
    (bench_folder / "catalog/springs/drawer.yaml").write_text("springs: []\n", "utf-8")
    ran = run("source", "need.yaml", "--sheet", "out.html", "--json")
    assert ran.json["verdict"]["option"] == "wound"
    page = (bench_folder / "out.html").read_text("utf-8")
    assert page.count('class="box"') == len(ran.json["winding"]["steps"])
    assert "Cut list" in page
    assert "this line is 100 mm long" in page
    assert page.count("<h1>") == page.count("<main>") == 1


def test_several_needs_are_on_one_page_and_share_no_name(run, bench_folder):
    (bench_folder / "catalog/springs/drawer.yaml").write_text("springs: []\n", "utf-8")
    text = (bench_folder / "need.yaml").read_text("utf-8")
    (bench_folder / "other.yaml").write_text(text.replace("punch-return", "other-punch"), "utf-8")
    assert run("source", "need.yaml", "other.yaml", "--sheet", "out.html").status == 0
    page = (bench_folder / "out.html").read_text("utf-8")
    assert page.count("<h1>") == 2
    ids = re.findall(r'\sid="([^"]+)"', page)
    assert len(ids) == len(set(ids)) > 10


def test_a_guarded_need_has_a_page_without_anything_to_make(run, bench_folder):
    text = (bench_folder / "need.yaml").read_text("utf-8")
    text = text.replace("return spring under the lever of a desk punch", "spring of a garage door")
    (bench_folder / "need.yaml").write_text(text, "utf-8")
    assert run("source", "need.yaml", "--sheet", "out.html").status == 3
    page = (bench_folder / "out.html").read_text("utf-8")
    assert "licensed" in page
    assert "Cut list" not in page


@pytest.mark.parametrize(
    ("out", "status", "words"), [("out.txt", 2, "does not end in .html"), ("catalog.html", 1, "a folder")]
)
def test_a_page_that_cannot_be_written_is_told_before_anything_else(run, bench_folder, out, status, words):
    (bench_folder / "catalog.html").mkdir()
    ran = run("source", "need.yaml", "--sheet", out)
    assert ran.status == status
    assert words in " ".join(ran.err.split())
    assert ran.out == ""
