"""An extension spring that came out otherwise: its diameter, the tension that holds its coils, or gaps between them.

The coils are measured before the hooks are bent, so that both are still free: how many coils the body has, and how high
the hooks stand. Bodies and hooks are in body.py; what came out of the diameter, alone or with the tension, in
diameter.py; the tension alone in tension.py; coils that stand apart, and a spring that has set, in length.py.
"""
