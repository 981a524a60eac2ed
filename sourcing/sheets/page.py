"""A sheet as one HTML page that stands alone: no scripts, nothing from elsewhere; for the printer and for a phone."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from html import escape

from sourcing.files.findings import shown
from sourcing.sheets.drawing.svg import Picture

_NO_BREAK = "\N{NO-BREAK SPACE}"
_TYPED = re.compile("`([^`]+)`")
_OPTION = re.compile(r"(?<![\w-])--[a-z][a-z-]*")

STYLE = """
@page { margin: 8mm 10mm }
:root { color-scheme: light }
body { font: 9pt/1.15 sans-serif; color: #000; background: #fff; margin: 0 auto; padding: 0 .5mm }
h1 { font-size: 1.55em; margin: 0 0 2mm }
h2 { font-size: 1.17em; margin: 2mm 0 .8mm; border-bottom: .3mm solid #000; break-after: avoid }
h1, p, li, .words { overflow-wrap: anywhere }
code { font: inherit; font-weight: bold }
.whole { white-space: nowrap }
p, ul, ol { margin: .8mm 0 1.2mm }
ul, ol { padding-left: 6mm }
li { margin-bottom: .2mm; break-inside: avoid }
.lead { font-weight: bold }
.cautions { border: .5mm solid #000; padding: 1mm 3mm; margin: 1mm 0 2mm }
.cautions h2 { border: 0; margin: 0 }
ul.two { columns: 2 70mm; column-gap: 8mm; font-size: .95em }
.cautions ul { margin-bottom: 0 }
.beside { display: flex; gap: 0 4mm; justify-content: space-between; align-items: flex-start }
.beside > * { flex: 0 1 auto; min-width: 0 }
.true > .beside { justify-content: flex-start }
.beside > .pictures { flex: none }
table { border-collapse: collapse; font-size: .95em; margin: .8mm 0 1.2mm }
tr { break-inside: avoid }
thead, thead + tbody > tr:first-child { break-before: avoid }
caption { text-align: left; padding-bottom: .5mm }
th, td { border: .2mm solid #000; padding: .3mm 1.4mm; text-align: left; vertical-align: top }
th { white-space: nowrap }
thead th, .checks th { white-space: normal }
td.blank { min-width: 16mm }
td.words { min-width: 45mm }
.sheet + .sheet { break-before: page }
.together, figure { break-inside: avoid }
figure { margin: 1mm 0 }
figure svg { display: block; max-width: 100%; height: auto }
figcaption { font-size: .95em; contain: inline-size }
.true svg { max-width: none }
.box { display: inline-block; width: 3.2mm; height: 3.2mm; border: .35mm solid #000; margin-right: 2mm }
@media screen {
  body { padding: 4mm; font-size: 11pt; max-width: 210mm }
}
@media screen and (max-width: 190mm) {
  body { font-size: 12pt }
  .scroll, .true { overflow-x: auto }
  .beside { display: block }
  th { white-space: normal }
}
"""


def as_text(words: str) -> str:
    r"""Words that are no markup, with what could act on a reader made visible; a space that keeps a unit stays one.

    >>> as_text("<b>9.92\N{NO-BREAK SPACE}mm\x07</b>") == "&lt;b&gt;9.92\N{NO-BREAK SPACE}mm\\x07&lt;/b&gt;"
    True
    """
    return escape(_NO_BREAK.join(shown(part) for part in words.split(_NO_BREAK)))


def marked(words: str) -> str:
    """Words as text, with what stands between backticks marked up as what is typed; no option is broken off.

    >>> marked("Ask `springwright wind` <why>.")
    'Ask <code>springwright wind</code> &lt;why&gt;.'
    >>> marked("with --came-out")
    'with <span class="whole">--came-out</span>'
    """
    typed = _TYPED.sub(r"<code>\1</code>", as_text(words))
    return _OPTION.sub(r'<span class="whole">\g<0></span>', typed)


def page(title: str, parts: Iterable[str]) -> str:
    """The whole page."""
    head = (
        '<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{as_text(title)}</title><style>{STYLE}</style>"
    )
    body = "\n".join(parts)
    return f'<!DOCTYPE html>\n<html lang="en">\n<head>{head}</head>\n<body>\n{body}\n</body>\n</html>\n'


def main(parts: Iterable[str]) -> str:
    """The parts that a page is for."""
    return "<main>\n" + "\n".join(parts) + "\n</main>"


def section(parts: Iterable[str]) -> str:
    """Parts that begin on a sheet of paper of their own."""
    return '<section class="sheet">\n' + "\n".join(parts) + "\n</section>"


def heading(words: str, level: int = 2) -> str:
    """A heading."""
    return f"<h{level}>{as_text(words)}</h{level}>"


def paragraph(words: str, lead: bool = False) -> str:
    """A paragraph; `lead`: the one that is read first."""
    kind = ' class="lead"' if lead else ""
    return f"<p{kind}>{marked(words)}</p>"


def bullets(items: Iterable[str], in_two: bool = False) -> str:
    """A list without an order; `in_two`: in two columns where there is room."""
    columns = ' class="two"' if in_two else ""
    return f"<ul{columns}>{''.join(f'<li>{marked(item)}</li>' for item in items)}</ul>"


def steps(items: Iterable[str]) -> str:
    """A list in its order, with a box to tick at each."""
    box = '<span class="box" aria-hidden="true"></span>'
    return f"<ol>{''.join(f'<li>{box}{marked(item)}</li>' for item in items)}</ol>"


def cautions(title: str, items: Iterable[str]) -> str:
    """Cautions in a frame of their own."""
    return f'<section class="cautions">{heading(title)}{bullets(items, in_two=True)}</section>'


def table(headers: Sequence[str], rows: Iterable[Sequence[str]], caption: str = "", blank: int = 0) -> str:
    """A table whose rows are headed by their first cell; so many columns at the end are left blank to write in."""
    return _table(headers, (f"<tr>{_cells(row, blank)}</tr>" for row in rows), caption)


Group = tuple[Sequence[Sequence[str]], str]
"""Rows of a table, and the words that all of them share."""


def table_with_words(headers: Sequence[str], groups: Iterable[Group], caption: str = "") -> str:
    """A table with a blank cell in each row to write in, and beside each group of rows the words that they share."""
    return _table(headers, (row for group in groups for row in _grouped(*group)), caption, "checks")


def _grouped(rows: Sequence[Sequence[str]], words: str) -> Iterator[str]:
    shared = f'<td class="words" rowspan="{len(rows)}">{marked(words)}</td>'
    for place, row in enumerate(rows):
        yield f"<tr>{_cells(row, 1)}{shared if place == 0 else ''}</tr>"


def _table(headers: Sequence[str], rows: Iterable[str], caption: str, kind: str = "") -> str:
    top = f"<caption>{as_text(caption)}</caption>" if caption else ""
    if any(headers):
        heads = "".join(f'<th scope="col">{as_text(each)}</th>' if each else "<td></td>" for each in headers)
        top += f"<thead><tr>{heads}</tr></thead>"
    named = f' class="{kind}"' if kind else ""
    return f'<div class="scroll"><table{named}>{top}<tbody>{"".join(rows)}</tbody></table></div>'


def _cells(row: Sequence[str], blank: int) -> str:
    first, *rest = row
    cells = "".join(f"<td>{marked(cell)}</td>" for cell in rest) + '<td class="blank"></td>' * blank
    return f'<th scope="row">{as_text(first)}</th>{cells}'


def unbroken(words: str) -> str:
    """A figure that keeps its unit beside it; what stands in brackets may go to the next line.

    >>> unbroken("10.5 mm (10.2 to 10.7)").split(" ")
    ['10.5\\xa0mm', '(10.2\\xa0to\\xa010.7)']
    """
    return words.replace(" ", _NO_BREAK).replace(f"{_NO_BREAK}(", " (")


def beside(*parts: str) -> str:
    """Parts side by side, where there is room for that."""
    return f'<div class="beside">{"".join(map(_block, parts))}</div>'


def _block(part: str) -> str:
    """A part that keeps its width where it is all pictures."""
    kept = ' class="pictures"' if part.startswith("<figure") else ""
    return f"<div{kept}>{part}</div>"


def true_size(parts: str) -> str:
    """Pictures that are never made smaller; a narrow screen moves them under its edge."""
    return f'<div class="true">{parts}</div>'


def together(parts: Iterable[str]) -> str:
    """Parts that stay on one page."""
    return f'<div class="together">{"".join(parts)}</div>'


def figure(picture: Picture, name: str, caption: str = "") -> str:
    """A picture with what stands below it."""
    below = f"<figcaption>{as_text(caption)}</figcaption>" if caption else ""
    return f"<figure>{picture.svg(name)}{below}</figure>"
