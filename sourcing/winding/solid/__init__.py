"""The mandrel as a solid: from a winding plan to a shape that can be printed or turned and that the spring comes off.

1. coil.py      the wire as it lies on the mandrel: turn, height, radius, and what it opens to
2. release.py   how the spring comes off, and so how the seat is cut
3. surface.py   the radius by angle and height: the lower of the wire's seat and the land
4. shape.py     shank, collar with name and slot, body (lettering.py: the name as dots)
5. mesh.py      points and triangles
6. printed.py   what a printed one stands, and whether the printer holds it
7. words.py     all that in sentences
"""
