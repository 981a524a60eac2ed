"""A sheet as one HTML page that stands alone: no scripts, nothing from elsewhere; for the printer and for a phone."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape

from sourcing.sheets.drawing.svg import Picture

STYLE = """
@page { margin: 12mm 14mm }
:root { color-scheme: light }
body { font: 9pt/1.3 sans-serif; color: #000; background: #fff; max-width: 182mm; margin: 0 auto; padding: 0 3mm }
h1 { font-size: 14pt; margin: 2mm 0 1mm }
h2 { font-size: 11pt; margin: 3.5mm 0 1mm; border-bottom: .3mm solid #000; break-after: avoid }
p, ul, ol { margin: 1mm 0 2mm }
ul, ol { padding-left: 6mm }
li { margin-bottom: .4mm; break-inside: avoid }
.lead { font-weight: bold }
.cautions { border: .5mm solid #000; padding: 1mm 3mm; margin: 2mm 0 }
.cautions h2 { border: 0; margin: 1mm 0 }
.cautions ul { columns: 2 70mm; column-gap: 8mm }
.beside { display: flex; gap: 0 4mm; align-items: flex-start }
.beside > div + div { flex: none }
table { border-collapse: collapse; font-size: 8.5pt; margin: 1mm 0 3mm; max-width: 100%; break-inside: avoid }
th, td { border: .2mm solid #000; padding: .4mm 1.6mm; text-align: left; vertical-align: top }
td.blank { min-width: 18mm }
figure { margin: 2mm 0; display: inline-block; vertical-align: top; break-inside: avoid; max-width: 100% }
figcaption { font-size: 8.5pt; max-width: 66mm }
.true figure svg { max-width: none }
.box { display: inline-block; width: 3.2mm; height: 3.2mm; border: .35mm solid #000; margin-right: 2mm }
@media screen and (max-width: 190mm) {
  body { font-size: 12pt }
  table { display: block; overflow-x: auto }
  .beside { display: block }
  .true { overflow-x: auto }
}
"""


def page(title: str, parts: Iterable[str]) -> str:
    """The whole page."""
    head = (
        '<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(title)}</title><style>{STYLE}</style>"
    )
    body = "\n".join(parts)
    return (
        f'<!DOCTYPE html>\n<html lang="en">\n<head>{head}</head>\n<body>\n<main>\n{body}\n</main>\n</body>\n</html>\n'
    )


def heading(words: str, level: int = 2) -> str:
    """A heading."""
    return f"<h{level}>{escape(words)}</h{level}>"


def paragraph(words: str, lead: bool = False) -> str:
    """A paragraph; `lead`: the one that is read first."""
    marked = ' class="lead"' if lead else ""
    return f"<p{marked}>{escape(words)}</p>"


def as_typed(lines: Iterable[str]) -> str:
    """Lines that keep their blanks."""
    return f"<pre>{escape(chr(10).join(lines))}</pre>"


def bullets(items: Iterable[str]) -> str:
    """A list without an order."""
    return f"<ul>{''.join(f'<li>{escape(item)}</li>' for item in items)}</ul>"


def steps(items: Iterable[str]) -> str:
    """A list in its order, with a box to tick at each."""
    box = '<span class="box" aria-hidden="true"></span>'
    return f"<ol>{''.join(f'<li>{box}{escape(item)}</li>' for item in items)}</ol>"


def cautions(title: str, items: Iterable[str]) -> str:
    """Cautions in a frame of their own."""
    return f'<section class="cautions">{heading(title)}{bullets(items)}</section>'


def table(headers: Sequence[str], rows: Iterable[Sequence[str]], caption: str = "", blank: int = 0) -> str:
    """A table whose rows are headed by their first cell; so many columns at the end are left blank to write in."""
    top = f"<caption>{escape(caption)}</caption>" if caption else ""
    if any(headers):
        heads = "".join(f'<th scope="col">{escape(each)}</th>' for each in headers)
        top += f"<thead><tr>{heads}</tr></thead>"
    body = "".join(_row(row, blank) for row in rows)
    return f"<table>{top}<tbody>{body}</tbody></table>"


def _row(row: Sequence[str], blank: int) -> str:
    first, *rest = row
    cells = "".join(f"<td>{escape(cell)}</td>" for cell in rest) + '<td class="blank"></td>' * blank
    return f'<tr><th scope="row">{escape(first)}</th>{cells}</tr>'


def beside(*parts: str) -> str:
    """Parts side by side, where there is room for that."""
    return f'<div class="beside">{"".join(f"<div>{part}</div>" for part in parts)}</div>'


def figure(picture: Picture, name: str, caption: str = "") -> str:
    """A picture with what stands below it."""
    below = f"<figcaption>{escape(caption)}</figcaption>" if caption else ""
    return f"<figure>{picture.svg(name)}{below}</figure>"
