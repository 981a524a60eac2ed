"""Words made into noun phrases with the known words in them marked, and the small words that link them.

"The spring of the brake light" is [spring] of the [brake light]. This is no grammar: it is just enough to tell what a
danger's word belongs to. What the marks lead to is the business of `judgement`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum, auto
from functools import lru_cache

from sourcing.safety import harmless
from sourcing.safety.duties import DUTIES
from sourcing.safety.words import PAUSE, SENTENCE_END, phrases, ways_to_write, word_set


class Role(Enum):
    """What a known phrase says of a need."""

    SURE = auto()  # tells a guarded duty by itself
    DOUBTFUL = auto()  # might
    PART = auto()  # one half of a pair
    WHOLE = auto()  # the other half
    TOY = auto()
    HOUSEHOLD = auto()
    HARMLESS = auto()  # household, for one duty
    ASIDE = auto()
    REAL = auto()  # even a toy with this can hurt


@dataclass(frozen=True, slots=True)
class Mark:
    """One meaning of a phrase: its role, the duty it speaks of (and which of its pairs), and whether one word says it.

    "Handbrake" is a compound too: it says as much as "hand brake" does.
    """

    role: Role
    duty: str = ""
    pair: int = 0
    compound: bool = False


@dataclass(frozen=True, slots=True)
class Known:
    """A known phrase at `start` in the words of its noun phrase."""

    words: tuple[str, ...]
    marks: tuple[Mark, ...]
    start: int

    def has(self, *roles: Role) -> bool:
        """Whether one of its meanings has one of these roles."""
        return any(mark.role in roles for mark in self.marks)

    @property
    def end(self) -> int:
        """The place after its last word."""
        return self.start + len(self.words)


@dataclass(frozen=True, slots=True)
class NounPhrase:
    """Words without a small word between them, the known phrases among them, and the small words before them."""

    words: tuple[str, ...]
    known: tuple[Known, ...]
    link: tuple[str, ...]

    def has(self, *roles: Role) -> bool:
        """Whether a phrase of one of these roles is in it."""
        return any(known.has(*roles) for known in self.known)


DETERMINERS = word_set("a an the my our your his her its their this that these those some any each every one")
OF = DETERMINERS | word_set("of for to from in on inside into at within onto off belonging fitted used")
WITH = word_set("with whose having has")
NOT = word_set("not no never without nor neither nothing unlike non nowhere hardly cannot")
BESIDE = word_set("next beside near nearby alongside adjacent opposite")
LIKE = word_set("like resembling")
HOLDS = word_set("hold carry store keep show of for about")
_LINKS = (
    OF
    | WITH
    | NOT
    | BESIDE
    | LIKE
    | HOLDS
    | word_set(
        """and or but so if than then as because while when where which who what by under over above below behind
        before after against between through across along around up down out is are was were be been being am do does
        did had have must can could will would shall should may might i we you he she it they them us me also only just
        very too still again now there here push pull press close open return move make give need want fit sit go
        come lie hang work stop break broke snap snapped fail failed fell miss instead rather both either"""
    )
)
_BEFORE_A_VERB = word_set(
    "to must can could will would shall should may might i we you he she they it which who not cannot help let"
)
_MAY_BE_A_VERB = word_set("lift brake trigger guard jack hoist winch recoil trip harness shock saw book stand")
_TURNS_ROUND = word_set("of for to from on")
_LONGEST_NOUN_PHRASE = 16  # a longer run of words is none, and is broken off
_LONGEST_SENTENCE = 120
_LONGEST = 4  # words of a known phrase looked for on either side of a link


def noun_phrases(sentence: Sequence[str]) -> tuple[NounPhrase, ...]:
    """The noun phrases of a sentence in order."""
    found: list[NounPhrase] = []
    link: list[str] = []
    words: list[str] = []
    known: list[Known] = []

    def end_phrase() -> None:
        if words:
            found.append(NounPhrase(tuple(words), tuple(known), tuple(link)))
            for part in (words, known, link):
                part.clear()

    place = 0
    while place < len(sentence):
        word = sentence[place]
        if len(words) >= _LONGEST_NOUN_PHRASE:
            end_phrase()
        match = None if _is_verb(sentence, place) else _longest_known(sentence, place)
        if match:
            known.append(Known(match, _phrase_book()[match], len(words)))
            words.extend(match)
            place += len(match)
            continue
        if word in _LINKS or word == PAUSE:
            end_phrase()
            link.append(word)
        else:
            words.append(word)
        place += 1
    end_phrase()
    return tuple(_turned_round(found))


def sentences(words: Sequence[str]) -> Iterator[tuple[str, ...]]:
    """The words of each sentence that has any; one that never seems to end is broken off at a small word."""
    start = 0
    for place, word in enumerate((*words, SENTENCE_END)):
        length = place - start
        too_long = length >= _LONGEST_SENTENCE and (word in _LINKS or length >= 2 * _LONGEST_SENTENCE)
        if word == SENTENCE_END or too_long:
            if length:
                yield tuple(words[start:place])
            start = place + (word == SENTENCE_END)


def _is_verb(sentence: Sequence[str], place: int) -> bool:
    """ "Must lift a lid", "to brake the fall"; but not "the brake the mechanic fitted"."""
    if sentence[place] not in _MAY_BE_A_VERB:
        return False
    before = sentence[place - 1] if place else ""
    after = sentence[place + 1] if place + 1 < len(sentence) else ""
    if before in _BEFORE_A_VERB:
        return True
    takes_an_object = after in DETERMINERS or after[:1].isdigit()
    return takes_an_object and before not in OF


def _longest_known(words: Sequence[str], place: int) -> tuple[str, ...] | None:
    book = _phrase_book()
    for length in range(_longest_from().get(words[place], 0), 0, -1):
        candidate = tuple(words[place : place + length])
        if candidate in book:
            return candidate
    return None


def _turned_round(found: list[NounPhrase]) -> list[NounPhrase]:
    """The noun phrases, where "seat for a child" has been found to say what "child seat" says."""
    for place in range(len(found) - 1):
        owned, owner = found[place], found[place + 1]
        across = _known_across(owner, owned)
        if across is None:
            continue
        in_owner, words = across
        known_after = tuple(known for known in owned.known if known.start >= len(words) - in_owner)
        known_before = tuple(known for known in owner.known if known.end <= len(owner.words) - in_owner)
        found[place] = replace(owned, known=(Known(words, _phrase_book()[words], 0), *known_after))
        found[place + 1] = replace(owner, known=known_before)
    return found


def _known_across(owner: NounPhrase, owned: NounPhrase) -> tuple[int, tuple[str, ...]] | None:
    """The longest known phrase that ends `owner` and goes on in `owned`, and how many of its words are the owner's."""
    if not _TURNS_ROUND.intersection(owner.link) or not OF.issuperset(owner.link):
        return None
    tail = owner.words[-_LONGEST:]
    joined = tail + owned.words[:_LONGEST]
    inside_a_known = {place for known in owner.known for place in range(known.start + 1, known.end)}
    for start in range(len(tail)):
        words = _longest_known(joined, start)
        if len(owner.words) - len(tail) + start in inside_a_known:
            continue
        if words and start + len(words) > len(tail):
            return len(tail) - start, words
    return None


@lru_cache(maxsize=1)
def _phrase_book() -> dict[tuple[str, ...], tuple[Mark, ...]]:
    book: dict[tuple[str, ...], tuple[Mark, ...]] = {}
    for table, mark in _tables():
        for phrase in phrases(table):
            meaning = mark and replace(mark, compound=len(phrase) > 1)
            for written in ways_to_write(phrase):
                marks = book.get(written, ())
                book[written] = (*marks, meaning) if meaning and meaning not in marks else marks
    return book


def _tables() -> Iterator[tuple[str, Mark | None]]:
    for duty in DUTIES:
        yield duty.sure, Mark(Role.SURE, duty.name)
        yield duty.doubtful, Mark(Role.DOUBTFUL, duty.name)
        yield duty.harmless, Mark(Role.HARMLESS, duty.name)
        for index, pair in enumerate(duty.pairs):
            yield pair.part, Mark(Role.PART, duty.name, index)
            yield pair.whole, Mark(Role.WHOLE, duty.name, index)
    yield harmless.TOYS, Mark(Role.TOY)
    yield harmless.HOUSEHOLD, Mark(Role.HOUSEHOLD)
    yield harmless.ASIDE, Mark(Role.ASIDE)
    yield harmless.STILL_DANGEROUS, Mark(Role.REAL)
    yield harmless.NOTHING, None


@lru_cache(maxsize=1)
def _longest_from() -> dict[str, int]:
    """The length of the longest known phrase that begins with a word."""
    longest: dict[str, int] = {}
    for phrase in _phrase_book():
        longest[phrase[0]] = max(longest.get(phrase[0], 0), len(phrase))
    return longest
