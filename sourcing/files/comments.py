"""Where the comments of a text in YAML stand: what lies between its tokens and begins with #."""

from __future__ import annotations

import re
from collections.abc import Iterator

import yaml

_COMMENT = re.compile("#[^\r\n]*")


def comments(text: str) -> Iterator[tuple[int, int]]:
    """Where each comment begins and ends, in order. Raises `YAMLError` for a text that is none.

    >>> text = "a: 'no # comment' # one\\nb: [1, # two\\n 2]\\n"
    >>> [text[begin:end] for begin, end in comments(text)]
    ['# one', '# two']
    """
    read, loader = 0, getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    for token in yaml.scan(text, Loader=loader):
        for found in _COMMENT.finditer(text, read, token.start_mark.index):
            yield found.span()
        read = max(read, token.end_mark.index)
