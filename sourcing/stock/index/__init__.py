"""The index: a catalogue as it was last read, in an SQLite file of the user's cache folder, so that asking stays quick.

    files unchanged and index whole?  -- yes -->  springs in the ranges of a need  -->  the same judge
                 | no                                        ^
                 +--> read the files that changed, tell mistakes  --> write it anew

    shelf.py    whether an index may be believed, and what is read where not
    store.py    what stands in one
    kept.py     the files of the cache folder
    state.py    what an index was made from
    ranges.py   what is asked of it
    plain.py    values as JSON and back
    needs.py    needs as they were last read

An index is never altered: a new one takes its place under a name that holds the sum of its bytes, so that one cut
short or changed by anybody is known, and several processes never meet half of one. A catalogue with a mistake in it is
never indexed.
"""
