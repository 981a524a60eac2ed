"""The one room for drawings: SVG in true millimetres, black on white, for pages and for files of their own.

end_view.py    a torsion spring from its end, its legs named; one to one to lay the finished one on
hooked.py      an extension spring from the side, likewise
labels.py      words beside what they name, where nothing runs through them
mandrel.py     the turning drawing of a mandrel, with its table of dimensions
on_mandrel.py  the wire as it is laid on its mandrel; a spring of either hand
plots.py       force over length, with the working points and their tolerances
springs.py     a compression spring from the side, likewise
svg.py         lines, texts, dimensions, tables, and the picture round them
"""
