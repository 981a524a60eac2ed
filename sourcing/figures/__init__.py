"""Where a figure comes from: each formula as one record, from which docstring, workings and handbook are made.

notation.py   a formula as a person writes it: worked out, and shown with its numbers put in
symbols.py    which symbol means which parameter, and the unit that a name ends in
formula.py    the record of a formula, and how a function gets it
working.py    one figure worked out before the reader's eyes
"""

from sourcing.figures.formula import Formula, Holds, formula, formula_of, formulas
from sourcing.figures.working import Working, work

__all__ = ["Formula", "Holds", "Working", "formula", "formula_of", "formulas", "work"]
