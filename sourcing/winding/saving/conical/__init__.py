"""A cone that came out otherwise: each end judged in its place, the rate by what lies between them.

What is meant is in cone.py; what both ends measure, one of them by the same wire where it was not measured, in ends.py;
what is cut off an end in cutting.py; the mandrel of the next one in next_mandrel.py; the answer to ends that came out
otherwise in diameter.py, its words in words.py; what is answered to a pitch, and to a cone that has set, in length.py.
"""
