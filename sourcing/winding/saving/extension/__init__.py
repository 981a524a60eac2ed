"""An extension spring that came out otherwise: its diameter, the tension that holds its coils, or gaps between them.

The coils are measured before the hooks are bent, so that both are still free: how many coils the body has, and how high
the hooks stand. How a body is judged is in body.py, how hooks are bent in bending.py; what came out of the diameter,
alone or with the tension, in diameter.py and diameter_ways.py; the tension alone in tension.py and tension_ways.py;
what hangs on what it reads after heat or a pull in to_be_read.py;
coils that stand apart, and a spring that has set, in length.py; which rows of the list no longer apply in rows_left.py.
"""
