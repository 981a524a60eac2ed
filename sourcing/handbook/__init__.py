"""The handbook: pages that a person wrote (*.md beside this file), and pages made from the program's own records.

pages.py      which pages there are, and what stands in them
printing.py   a page of Markdown as lines for a terminal
formulas.py   every formula with its range and source
wires.py      every wire with its figures, and where sources disagree
checks.py     every published figure beside ours
"""

from sourcing.handbook.pages import Page, page_of, pages

__all__ = ["Page", "page_of", "pages"]
