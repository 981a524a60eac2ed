"""Free text made into plain words, so that a table of phrases can be looked up in it.

Case, accents, hyphens, apostrophes, plurals and British or American spelling are gone afterwards. Every step passes
once over the text, whatever stands in it. Nothing here knows what a word means.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache
from itertools import product

SENTENCE_END = "."
PAUSE = ","

_WORD_OR_MARK = re.compile(r"[0-9]+(?:[.,][0-9]+)+|[a-z0-9]+|[.;:!?\n]|[,()/\"]")
_DOTTED_LETTERS = re.compile(r"\b(?:[a-z]\.){2,}")
_APOSTROPHES = "'\u2018\u2019\u02bc\u00b4`"

_ONE_SPELLING = {
    "tyre": "tire",
    "calliper": "caliper",
    "karabiner": "carabiner",
    "carburetor": "carburettor",
    "carburetter": "carburettor",
    "lense": "len",  # lenses; "lens" loses its s below like any plural
    "buse": "bus",
    "children": "child",
    "prosthese": "prosthesis",
    "aeroplane": "airplane",
    "armour": "armor",
    "mould": "mold",
    "drier": "dryer",
    "plough": "plow",
    "leveller": "leveler",
    "steriliser": "sterilizer",
    "nebuliser": "nebulizer",
    "stabiliser": "stabilizer",
    "anaesthetic": "anesthetic",
    "paediatric": "pediatric",
    "orthopaedic": "orthopedic",
}


@lru_cache(maxsize=4096)
def stem(word: str) -> str:
    """A word in its singular and in one spelling.

    >>> [stem(word) for word in ("brakes", "harnesses", "tyres", "batteries", "gas")]
    ['brake', 'harness', 'tire', 'battery', 'gas']
    """
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is")):
        if word.endswith("ies"):
            word = word[:-3] + "y"
        elif word.endswith(("sses", "xes", "ches", "shes")):
            word = word[:-2]
        else:
            word = word[:-1]
    return _ONE_SPELLING.get(word, word)


def word_set(text: str) -> frozenset[str]:
    """The stems of a list of words parted by spaces."""
    return frozenset(stem(word) for word in text.split())


# Words that say how a thing looks, never what it does: "the garage's big old door" is a garage door.
_PASSED_OVER = word_set(
    """old older new broken worn rusty rusted heavy big small little large tiny long short left right upper lower inner
    outer missing lost original spare replacement vintage antique classic wooden steel plastic brass
    aluminium aluminum black white red blue green yellow grey gray strong weak stiff same other own real actual nice
    cheap expensive modern simple favourite favorite"""
)


def words_of(text: str, *, whole: bool = False) -> list[str]:
    """The stems of a text in order; a sentence's end is ".", a pause within it ",".

    Words that only say how a thing looks are passed over, unless the text is wanted `whole`.

    >>> words_of("Rear-brake lever (child's bike); it isn't mine")
    ['rear', 'brake', 'lever', ',', 'child', 'bike', ',', '.', 'it', 'is', 'not', 'mine']
    """
    plain = _DOTTED_LETTERS.sub(lambda dotted: dotted[0].replace(".", ""), _plain_letters(text))
    plain = plain.replace("n't", " not").replace("'s", " ").replace("'", " ")
    found = (_stem_or_mark(token) for token in _WORD_OR_MARK.findall(plain))
    return [word for word in found if whole or word not in _PASSED_OVER]


def phrases(table: str) -> Iterator[tuple[str, ...]]:
    """The phrases of a table's cell: parted by commas, with "|" between single words that may stand in one place.

    >>> list(phrases("hand|foot brake, pedals"))
    [('hand', 'brake'), ('foot', 'brake'), ('pedal',)]
    """
    for phrase in filter(str.strip, re.sub(r"\|\s+", "|", table).split(",")):
        for words in product(*(place.split("|") for place in phrase.split())):
            yield tuple(stem(word) for word in words)


def ways_to_write(words: tuple[str, ...]) -> set[tuple[str, ...]]:
    """A phrase as it stands, with two neighbours in one word, and all in one word.

    >>> sorted(ways_to_write(("hand", "brake")))
    [('hand', 'brake'), ('handbrake',)]
    """
    joined = {(*words[:i], words[i] + words[i + 1], *words[i + 2 :]) for i in range(len(words) - 1)}
    return {words, ("".join(words),)} | joined


def _stem_or_mark(token: str) -> str:
    if token in ".;!?\n":
        return SENTENCE_END
    if token in ',:()/"':
        return PAUSE
    return stem(token)


def _plain_letters(text: str) -> str:
    """The text in small letters without accents; what cannot be a letter here is a space."""
    folded = text.casefold()
    if folded.isascii():
        return folded
    return folded.translate({ord(letter): _plain_letter(letter) for letter in set(folded)})


def _plain_letter(letter: str) -> str:
    if letter.isascii():
        return letter
    if letter in _APOSTROPHES:
        return "'"
    if unicodedata.category(letter) in ("Mn", "Cf"):  # accents on their own, soft hyphens, marks of no width
        return ""
    base = "".join(part for part in unicodedata.normalize("NFKD", letter).casefold() if part.isascii())
    return base if 0 < len(base) <= 3 else " "
