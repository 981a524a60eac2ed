"""A torsion spring that came out otherwise: in its diameter, in the angle between its legs, or both.

All the wire of the body stays in it, so the rate is what was meant however far the coil opened; the coils, and with
them the legs, have turned back by more or by less. The body and its legs are in body.py, what to do with them in
answer.py, that its heat comes first in heat_to_come.py, what is said of it in words.py.
"""
