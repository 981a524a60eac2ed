"""What the words round a danger's phrase do to it.

The place of a phrase takes its meaning away where
- what follows in its noun phrase is the thing itself: "brake light", "gun cabinet"; so is the box of a
  "box for brake pads";
- it belongs to a toy or to a household thing: "toy pistol", "valve of a trumpet", "trigger of a spray bottle";
- it is denied or a likeness: "not a brake", "shaped like a pistol";
- it only stands near: "lamp next to the garage door" (but not "lamp next to the garage door spring").
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from sourcing.safety.reading import (
    BESIDE,
    DETERMINERS,
    HOLDS,
    LIKE,
    NOT,
    OF,
    WITH,
    Known,
    Mark,
    NounPhrase,
    Role,
    noun_phrases,
    sentences,
)
from sourcing.safety.words import word_set, words_of

THINGS = frozenset({Role.TOY, Role.HOUSEHOLD, Role.HARMLESS})
SAYS_LITTLE = word_set("spring coil return compression extension tension torsion conical wire mechanism assembly part")
_BETWEEN_NOT_AND_THE_THING = OF | word_set("do with be part kind sort mean or any")
_OR = DETERMINERS | word_set("or nor for of")
_NOTHING_DENIED = word_set("force action power effect pressure response grip")  # "there is no brake force"
_OWNERS_LOOKED_FOR = 4  # "the trigger of the nozzle of a garden hose"


@dataclass(frozen=True, slots=True)
class Mention:
    """A meaning of a phrase in its place: in which sentence, whether bare, and whether the place takes it away."""

    words: tuple[str, ...]
    mark: Mark
    sentence: int
    set_aside: bool
    of_a_toy: bool
    bare: bool


@dataclass(frozen=True, slots=True)
class _Place:
    """A noun phrase in its sentence, with what holds for every phrase in it."""

    phrase: NounPhrase
    owners: frozenset[Mark]
    denied: bool
    elsewhere: bool

    def takes_away(self, known: Known, mark: Mark) -> bool:
        """Whether the meaning `mark` of `known` is lost here."""
        if self._denies(known):
            return True
        if mark.role is Role.REAL or mark.role in THINGS:
            return False
        thing_itself = any(later.has(Role.ASIDE) for later in self.phrase.known if later.start >= known.end)
        return thing_itself or self.elsewhere or any(disarms(owner, mark) for owner in self.owners)

    def _denies(self, known: Known) -> bool:
        words = self.phrase.words
        known_before = sum(len(other.words) for other in self.phrase.known[:4] if other.end <= known.start)
        after = words[known.end] if known.end < len(words) else ""
        return self.denied and known_before == known.start and after not in _NOTHING_DENIED


def mentions(texts: Iterable[str]) -> list[Mention]:
    """Every known phrase of the texts; the sentences are numbered through."""
    every_sentence = (sentence for text in texts for sentence in sentences(words_of(text)))
    return [
        Mention(
            known.words,
            mark,
            number,
            place.takes_away(known, mark),
            any(owner.role is Role.TOY for owner in place.owners),
            _is_bare(known, place.phrase),
        )
        for number, sentence in enumerate(dict.fromkeys(every_sentence))
        for place in _places(noun_phrases(sentence))
        for known in place.phrase.known
        for mark in known.marks
        if mark.role is not Role.ASIDE
    ]


def disarms(owner: Mark, danger: Mark) -> bool:
    """Whether what belongs to `owner` is harmless in spite of the words of a danger.

    A toy disarms everything; a household thing only what one word says, for "emergency stop" means it anywhere.
    """
    if owner.role is Role.TOY:
        return True
    if danger.compound and danger.role is Role.SURE:
        return False
    return owner.role is Role.HOUSEHOLD or (owner.role is Role.HARMLESS and owner.duty == danger.duty)


def _is_bare(known: Known, phrase: NounPhrase) -> bool:
    """Whether nothing else in the noun phrase says what this is."""
    rest = (*phrase.words[: known.start], *phrase.words[known.end :]) if len(phrase.words) < 9 else phrase.words
    return SAYS_LITTLE.issuperset(rest)


def _places(phrases: Sequence[NounPhrase]) -> Iterator[_Place]:
    denied = False
    something_before = False
    for index, phrase in enumerate(phrases):
        denied = _link_denies(phrase.link) or (denied and bool(phrase.link) and _OR.issuperset(phrase.link))
        near = bool(BESIDE.intersection(phrase.link)) and something_before and phrase.words[-1] != "spring"
        is_held = index > 0 and _holds(phrases[index - 1], phrase.link)
        alike = bool(LIKE.intersection(phrase.link))
        yield _Place(phrase, _owners(phrases, index), denied, near or is_held or alike)
        something_before = something_before or not SAYS_LITTLE.issuperset(phrase.words)


def _link_denies(link: Sequence[str]) -> bool:
    denials = [place for place, word in enumerate(link) if word in NOT]
    return len(denials) == 1 and _BETWEEN_NOT_AND_THE_THING.issuperset(link[denials[0] + 1 :])


def _holds(before: NounPhrase, link: Sequence[str]) -> bool:
    """Whether the phrase before is a box, a hook or a light for this one."""
    if not HOLDS.intersection(link) or NOT.intersection(link):
        return False
    asides = [known for known in before.known if known.has(Role.ASIDE)]
    # "light" may also mean "not heavy"
    return any(known.words != ("light",) or known.end == len(before.words) for known in asides)


def _owners(phrases: Sequence[NounPhrase], index: int) -> frozenset[Mark]:
    """The toys and household things that the phrase at `index` names or belongs to."""
    owning = [phrases[index]]
    for following in phrases[index + 1 : index + 1 + _OWNERS_LOOKED_FOR]:
        if not OF.issuperset(following.link):
            break
        owning.append(following)
    if index and WITH.intersection(phrases[index].link):
        owning.append(phrases[index - 1])
    return frozenset(mark for phrase in owning if not _link_denies(phrase.link) for mark in _things(phrase))


def _things(phrase: NounPhrase) -> Iterator[Mark]:
    return (mark for known in phrase.known for mark in known.marks if mark.role in THINGS)
