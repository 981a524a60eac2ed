"""A coil that came out otherwise than meant: whether it can be saved, how, and what to do at the next one.

What all kinds share is in coil.py; what a measure means for one of them in the module of its kind; which measures serve
for which kind in kinds.py. A diameter or an angle is measured as wound, before any heat, unless it is said otherwise;
the spring that would come of it is judged after heat, like any other.
"""
