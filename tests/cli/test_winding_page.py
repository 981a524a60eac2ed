"""The winding sheet as a page: it stands alone, its parts can be told apart, and it is written whole or not at all."""

from __future__ import annotations

import re
from html import unescape
from html.parser import HTMLParser

import pytest


class Parts(HTMLParser):
    """The tags and the words of a page, and whatever it would fetch."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.words: list[str] = []
        self.fetched: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.fetched += [value or "" for name, value in attrs if name in ("src", "href", "action", "data")]

    def handle_data(self, data: str) -> None:
        self.words.append(data)


KINDS = {
    "compression": "",
    "conical": "job: button\nkind: conical\npocket: {large_end: {bore: 18 mm}, small_end: {bore: 18 mm}}\n"
    "working:\n  - {length: 12 mm, force: 2.6 N ± 20 %}\n  - {length: 7 mm, force: 8 N ± 20 %}\n"
    "free_length: 16 mm ± 2 mm\nends: closed\n",
    "extension": "job: drawer\nkind: extension\npocket: {bore: 11 mm}\nworking:\n  - {length: 48 mm, force: 4.2 N}\n"
    "  - {length: 70 mm, force: 17 N}\nhooks: full-loop\n",
    "torsion": "job: handle\nkind: torsion\nhand: right\npocket: {rod: 5 mm, bore: 14 mm, width: 14 mm}\nworking:\n"
    "  - {angle: 60 deg, torque: 60 N*mm ± 20 %}\nleg_1: 25 mm\nleg_2: 20 mm\n",
}
"""A need of each kind that is wound from the spool of the bench."""

HEADINGS = ("Before you begin", "Cut list", "On the mandrel", "What comes out", "At the bench",
    "What not to do", "Accept it when",
            "In its true size", "How it goes in", "Write down each coil", "Notes")  # fmt: skip


@pytest.fixture(params=list(KINDS))
def sheet(request, run, bench_folder):
    """The page of a plan of each kind, with the plan's own document."""
    if KINDS[request.param]:
        (bench_folder / "need.yaml").write_text(KINDS[request.param], "utf-8")
    ran = run("wind", "need.yaml", "--sheet", "out.html", "--json")
    assert ran.status == 0, ran.out
    return request.param, (bench_folder / "out.html").read_text("utf-8"), ran.json


def test_a_page_fetches_nothing_and_runs_nothing(sheet):
    _, page, _ = sheet
    parts = Parts(page)
    assert parts.fetched == []
    assert not {"script", "link", "img", "iframe", "object"} & set(parts.tags)
    assert "url(" not in page
    assert "@import" not in page
    assert not re.search(r"""\son\w+\s*=|\ssrc\s*=|\shref\s*=|javascript:""", page)


def test_a_page_has_its_parts_in_the_order_of_the_work(sheet):
    _, page, _ = sheet
    parts = Parts(page)
    assert page.startswith('<!DOCTYPE html>\n<html lang="en">')
    assert parts.tags.count("h1") == 1
    assert parts.tags.count("main") == 1
    found = [words for words in parts.words if words in HEADINGS]
    assert found == list(HEADINGS)
    assert [tag for tag in parts.tags if re.fullmatch("h[1-6]", tag)] == ["h1", *["h2"] * len(HEADINGS)]


def test_no_figure_shows_how_its_space_is_written(sheet):
    _, page, _ = sheet
    assert "\\x" not in page
    assert "\N{NO-BREAK SPACE}mm" in page


def test_the_summary_is_one_sentence_after_the_cautions(sheet):
    _, page, _ = sheet
    (lead,) = re.findall(r'<p class="lead">(.*?)</p>', page)
    assert re.fullmatch(r"Wind [^.]*(\.\d[^.]*)*\.", lead)
    assert page.index("Wear eye protection") < page.index(lead)


def test_every_step_has_a_box_to_tick(sheet):
    _, page, document = sheet
    assert page.count('class="box"') == len(document["steps"])


def test_every_picture_says_what_it_shows(sheet):
    _, page, _ = sheet
    pictures = re.findall(r"<svg.*?</svg>", page, re.DOTALL)
    assert len(pictures) >= 5
    for picture in pictures:
        labels = re.search(r'role="img" aria-labelledby="(\S+) (\S+)"', picture)
        assert labels
        assert re.search(rf'<title id="{labels[1]}">[^<]+</title>', picture)
        assert re.search(rf'<desc id="{labels[2]}">[^<]+</desc>', picture)
    ids = re.findall(r'\sid="([^"]+)"', page)
    assert len(ids) == len(set(ids))


def test_every_row_of_a_table_has_a_head_and_every_column_its_own(sheet):
    _, page, _ = sheet
    for table in re.findall(r"<table.*?</table>", page, re.DOTALL):
        for row in re.findall(r"<tr>(.*?)</tr>", table.partition("<tbody>")[2]):
            assert row.startswith('<th scope="row">')
        for head in re.findall(r"<thead><tr>(.*?)</tr></thead>", table):
            assert len(re.findall('<th scope="col">', head)) >= head.count("<t") - 1


def test_the_drawings_tell_the_sizes_of_their_kind(sheet):
    kind, page, _ = sheet
    drawn = " ".join(re.findall(r"<text[^>]*>([^<]*)</text>", page))
    wanted = {
        "compression": ("active", "ends closed, ground", "right-hand"),
        "conical": ("active", "ends closed"),
        "extension": ("coils in body", "hooks: full loop"),
        "torsion": ("leg 1 25.0 mm, leg 2 20.0 mm", "load", "body", "right-hand", "deg"),
    }
    for words in (*wanted[kind], "this line is 100 mm long", "wire"):
        assert words in drawn


def test_each_check_has_room_for_what_is_measured_and_its_advice_beside_it(sheet):
    _, page, document = sheet
    (table,) = (each for each in re.findall(r"<table.*?</table>", page) if "if it does not" in each)
    rows = re.findall(r"<tr>(.*?)</tr>", table.partition("<tbody>")[2])
    assert all(row.count('class="blank"') == 1 for row in rows)
    words = re.findall(r'<td class="words" rowspan="(\d+)">', table)
    assert sum(map(int, words)) == len(rows)
    weighed = sum(1 for row in document["accept"] if row["figure"].startswith("scale_at"))
    assert len(rows) == len(document["accept"]) - weighed


def test_each_of_the_two_ranges_of_diameters_says_what_it_is_for(sheet, run):
    """The first is what the wire serves with other coils, the second what the coil of this sheet is held to."""
    _, page, document = sheet
    wind = run("wind", "need.yaml").out
    for told in (unescape(page), wind):
        said = " ".join(told.split())
        choosing = f"{document['answer']} That is for choosing a mandrel; the finished spring has a list of its own."
        assert (choosing in said) is bool(document["serves"])
        assert said.count("For the finished spring, with the coils of this sheet.") == 1
    assert "Accept it when For the finished spring, with the coils of this sheet." in " ".join(wind.split())


def test_what_is_said_of_the_solid_stands_on_the_page_too(run, bench_folder):
    assert run("wind", "need.yaml", "--sheet", "out.html", "--solid", "rod.stl").status == 0
    page = (bench_folder / "out.html").read_text("utf-8")
    said = run("wind", "need.yaml", "--solid", "rod.stl", "--json").json["solid"]["said"]
    assert "The mandrel as a solid" in page
    assert all(words.split("'")[0][:40] in page for words in said)


def test_a_job_full_of_marks_is_words_on_the_page(run, bench_folder):
    need = bench_folder / "need.yaml"
    text = need.read_text("utf-8")
    text = re.sub("^job: .*$", "job: '<script>alert(1)</script>/../&x'", text, flags=re.MULTILINE)
    text = re.sub("^what: .*$", "what: '</title><svg onload=x> a spring'", text, flags=re.MULTILINE)
    need.write_text(text, "utf-8")
    before = {path.name for path in bench_folder.iterdir()}
    assert run("wind", "need.yaml", "--sheet", "out.html").status == 0
    page = (bench_folder / "out.html").read_text("utf-8")
    assert "script" not in Parts(page).tags
    assert "&lt;script&gt;" in page
    assert "&lt;/title&gt;&lt;svg onload=x&gt;" in page
    assert {path.name for path in bench_folder.iterdir()} == before | {"out.html"}


def test_an_older_page_is_replaced_whole_and_keeps_its_permissions(run, bench_folder):
    page = bench_folder / "out.html"
    page.write_text("an older sheet" * 10_000, "utf-8")
    page.chmod(0o640)
    before = sorted(bench_folder.rglob("*"))
    assert run("wind", "need.yaml", "--sheet", "out.html").status == 0
    assert page.read_text("utf-8").endswith("</html>\n")
    assert "an older sheet" not in page.read_text("utf-8")
    assert page.stat().st_mode & 0o777 == 0o640
    assert sorted(bench_folder.rglob("*")) == before


@pytest.mark.parametrize(
    ("out", "status", "said"),
    [
        ("catalog", 2, "does not end in .html"),
        ("sheet.pdf", 2, "does not end in .html"),
        ("folder.html", 1, "a folder"),
        ("missing/out.html", 1, "missing"),
        ("locked/out.html", 1, "locked"),
    ],
)
def test_a_page_that_cannot_be_written_is_told_and_nothing_is_left(run, bench_folder, out, status, said):
    (bench_folder / "folder.html").mkdir()
    (bench_folder / "locked").mkdir(mode=0o555)
    before = sorted(bench_folder.rglob("*"))
    ran = run("wind", "need.yaml", "--sheet", out)
    assert ran.status == status
    assert said in " ".join(ran.err.split())
    assert sorted(bench_folder.rglob("*")) == before


def test_a_refused_winding_writes_no_page(run, bench_folder):
    ran = run("wind", "need.yaml", "--mandrel", "0.2", "--wire", "W08", "--sheet", "out.html")
    assert ran.status == 3
    assert "Nothing was written to out.html" in ran.err
    assert not (bench_folder / "out.html").exists()


def test_a_coil_that_came_out_otherwise_has_no_page(run, bench_folder):
    ran = run("wind", "need.yaml", "--came-out", "9.9 mm", "--sheet", "out.html")
    assert ran.status == 2
    assert "--came-out and --sheet; expected one of them" in " ".join(ran.err.split())
    assert not (bench_folder / "out.html").exists()


def test_a_character_that_acts_on_a_reader_is_made_visible_on_the_page(run, bench_folder):
    need = bench_folder / "need.yaml"
    text = need.read_text("utf-8")
    job = next(line for line in text.splitlines() if line.startswith("job:"))
    need.write_text(text.replace(job, 'job: "turned \\u202e round"'), "utf-8")
    assert run("wind", "need.yaml", "--sheet", "out.html").status == 0
    page = (bench_folder / "out.html").read_text("utf-8")
    assert "\u202e" not in page
    assert "turned \\u202e round" in page


def test_the_mandrels_to_choose_among_stand_on_the_page_with_their_chances(run, bench_folder):
    assert run("wind", "need.yaml", "--sheet", "out.html").status == 0
    page = (bench_folder / "out.html").read_text("utf-8")
    chosen = run("wind", "need.yaml", "--json").json["mandrel_choices"]
    assert len(chosen) > 1
    words = " ".join(Parts(page).words)
    assert "Mandrels to choose among" in words
    for each in chosen:
        assert each["said"] in words


def test_what_is_typed_is_marked_up_and_no_backtick_is_seen(sheet):
    _, page, _ = sheet
    assert "`" not in page
    assert "<code>springwright trial</code>" in page or "<code>springwright trial W" in page
