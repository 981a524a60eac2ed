"""The mandrel as a solid: from a winding plan to a shape that can be printed or turned and that the spring comes off.

1. coil.py      the wire as it lies on the mandrel: turn, height, radius, and what it opens to
2. release.py   how the spring comes off, and so how the seat is cut
3. surface.py   the radius by angle and height: the lower of the wire's seat and the land (unwound.py: where the
                opened coil stands against it)
4. sleeve.py    the bore of a sleeve for a steel rod
5. shape.py     shank or bore, collar with name and slot, body (lettering.py: the name as dots)
6. rings.py     the surface as closed rings; mesh.py sews them
7. bed.py       how it lies in the printer, cut into pieces where it must be
8. made.py      which of all that is made for a plan at a bench
9. printed.py   what a printed one stands
10. words.py    all that in sentences (printed_words.py: of printing; in_steps.py: in the steps of its plan)
"""
