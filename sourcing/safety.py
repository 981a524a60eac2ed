"""Guarded duties: needs whose failure could hurt someone, told from the words; and the cautions of the bench."""
