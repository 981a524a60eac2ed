"""The one room for drawings: SVG in true millimetres, black on white, for pages and for files of their own.

mandrel.py   the turning drawing of a mandrel, with its table of dimensions
svg.py       lines, texts, dimensions, tables, and the picture round them
springs.py   a spring from the side, to any scale; one to one to lay the finished one on
plots.py     force over length, with the working points and their tolerances
"""
