"""Rows of formulas and tables that were read and are not checked: what, how many, and why.

Single figures of worked examples stand in not_yet.py, wires and figures of wire in wire_figures.csv (`otherwise`).
"""

from __future__ import annotations

HOT = "hot coiled springs are not the program's"
OTHER = "another source is taken for the same thing; a docstring or a test says how far they lie apart"
NO_QUESTION = "the program asks no such question of a spring"
ADVICE = "a limit that a designer is advised to keep: no figure of a spring"
HABIT = "a habit of the trade, an assumption, or a sentence: no figure follows from it"
NO_WIRE = "no such wire in the program"
US_TOLERANCE = "one grade, in steps of US sizes: EN, DIN and JIS have three, and stand in the program"

NOT_CHECKED: dict[str, tuple[int, str]] = {
    "EN 13906-1, hot coiled: total coils, two solid lengths, gaps in static and dynamic duty": (5, HOT),
    "EN 13906-1, gaps in dynamic duty": (1, "half as much again, in words; the program gives the static ones"),
    "EN 13906-1, pitch of closed and of ground ends in the growth of the diameter": (2, OTHER),
    "EN 13906-1, work of a spring, F s/2": (1, "half the product of two figures that are checked"),
    "EN 13906-1, stiffness sideways; stress of an impact (two constants)": (3, NO_QUESTION),
    "EN 13906-1, slenderness L0/D": (1, "the ratio of two figures given: it is a part of the buckling length"),
    "JIS B 2704-1, solid length with the thickness of the tips": (1, OTHER),
    "Shigley, solid length of closed ends (nt + 1) d; 15 % of the travel kept before solid": (2, OTHER),
    "A US handbook, outside diameter at solid, ends kept from turning": (1, OTHER),
    "Largest pitch, D/2 and 0.7 Di; least total coils; driving frequency 15 to 20 times lower": (4, ADVICE),
    "EN 13906-3, leg that runs to the axis": (1, "the program's legs leave the coil along its tangent"),
    "EN 13906-3, body length with n + 1.5; JIS, closing for a small angle; US, 4000 a degree": (3, OTHER),
    "Machinery's Handbook, inside diameter of a wound torsion spring from the inside diameter": (1, OTHER),
    "JIS, when legs count; 3 to 30 coils; 0.2 d between the coils of a torsion spring": (3, ADVICE),
    "EN 13906-2, heights of double, English and small loops": (3, "the program's hooks are six, and not these"),
    "Machinery's Handbook, loop height 0.75 Di, two hooks as one coil; bend radius 1.5 d": (3, OTHER),
    "A spring cut shorter: its free length, its travel to solid, its coils": (3, NO_QUESTION),
    "Zimmerli's pair for peened wire, 398 and 534 MPa": (1, "no spring is taken for peened"),
    "Tensile strength of A232, of TDSiCr, TDSiCrV, FDCrV, FDSiCrV and VDSiCrV wire": (81, NO_WIRE),
    "Tensile strength of soft CuSn6, R510 to R700": (7, "no spring temper"),
    "Machinery's Handbook, tables 7 to 11: coil diameter, length, squareness, load": (85, US_TOLERANCE),
    "Machinery's Handbook, p. 343 and table 18, stockists' guides: torsion and stock springs": (32, US_TOLERANCE),
    "EN 15800 and JIS B 2704-2, squareness of other grades; JIS, number of coils; loops' position": (13, NO_QUESTION),
    "Preferred sizes of wire: R20, R40, ANSI B32.4, a textbook's": (9, "lists; the program proposes its tables' sizes"),
    "Winding: pitch after release": (4, "assumed until a trial replaces it, and up to 3 % from the model's at index 5"),
    "Winding: directions of stress relief, presetting, ends, wire and feed": (59, HABIT),
    "Measuring: instruments, ways of measuring, fits in a bore and on a rod": (56, HABIT),
    "Springback in workshops: cases with one number missing": (4, "the number is missing"),
    "Conductivity, relative permeability": (20, NO_QUESTION),
}
