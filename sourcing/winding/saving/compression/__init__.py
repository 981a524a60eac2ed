"""A coil of a cylindrical compression spring that came out otherwise: in its diameter, its pitch, or its set.

The body and its pitch are in body.py; what to do with a diameter, alone or with the pitch, in diameter.py, and what is
said of it in words.py; the pitch alone, and a spring that has set, in length.py.
"""
