"""Guarded duties: needs whose failure could hurt someone, told from the words; and the cautions of the bench.

words       text -> plain words                      duties     the table: words, harm, where to go
reading     words -> noun phrases with known phrases harmless   what takes the danger out of words
context     what the words round a phrase do to it   judgement  the answer
cautions    what the sheets say before the work
"""

from __future__ import annotations

from sourcing.safety.cautions import (
    CARRYING_CURRENT,
    CHOOSING_WIRE,
    GUARDED_CAUTIONS,
    RELEASING,
    bending_cautions,
    fitting_cautions,
    winding_cautions,
)
from sourcing.safety.judgement import guarded
from sourcing.safety.model import Guarded

__all__ = [
    "CARRYING_CURRENT",
    "CHOOSING_WIRE",
    "GUARDED_CAUTIONS",
    "RELEASING",
    "Guarded",
    "bending_cautions",
    "fitting_cautions",
    "guarded",
    "winding_cautions",
]
