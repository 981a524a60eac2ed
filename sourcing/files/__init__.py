"""The one door to YAML and to the disk.

findings.py   places, and mistakes as values; ordering them; making a name from a file safe to print
disk.py       a file's bytes made into text
document.py   text made into plain values that remember where they stand: the event loop on PyYAML's C parser
splicing.py   a text with one thing changed in it, all else as it was
replacing.py  a file's bytes replaced, whole or not at all
lock.py       one process at a time changes a file
syntax.py     what the YAML parser complains of, in our words
nearest.py    which of the right words a wrong one comes nearest to
records.py    values made into records: the only room that knows pydantic's errors
fields.py     the kinds of values that records are made of

events.py and splicing.py import yaml, records.py and fields.py pydantic; what may be imported before a file is read
stays clear of them.
"""
