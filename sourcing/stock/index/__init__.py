"""The index: a catalogue as it was last read, in an SQLite file of the user's cache folder, so that asking stays quick.

    files unchanged and index whole?  -- yes -->  springs in the ranges of a need  -->  the same judge
                 | no                                        ^
                 +--> read the files, tell mistakes  --> write it anew (in memory where the folder is closed to us)

An index is never altered: a new one takes its place under a name that holds the digest of its bytes, so that one cut
short or changed by anybody is known, and several processes never meet half of one. A catalogue with a mistake in it is
never indexed.
"""
