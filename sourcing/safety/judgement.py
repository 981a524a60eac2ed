"""Whether the words of a need point at a guarded duty.

1. Phrases of the table of duties are looked up; `context` sets those aside whose place takes the danger away.
2. What is left decides: a sure phrase, or both halves of a pair in one sentence, guard the need. A doubtful phrase
   asks, unless something in the need says that it is harmless; so does a pair whose halves stand in two sentences.
3. A name without a space (the job) is a label: its words count only where the sentences do not say what they mean.
4. `duty: ordinary` answers a doubt, never a sure phrase; `duty: guarded` guards whatever the words say.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from sourcing.safety.context import THINGS, Mention, disarms, mentions
from sourcing.safety.duties import DUTIES
from sourcing.safety.model import Duty, Guarded
from sourcing.safety.reading import Mark, Role

_BY_NAME = {duty.name: duty for duty in DUTIES}
_ANY_SENTENCE = -1  # where the words of a name stand
_LOCAL_CODES = "Local codes and licensed practice come before anything said here."


def guarded(need_words: Sequence[str], duty: str | None) -> Guarded | None:
    """Why the need whose texts are `need_words` (job, what, note) gets no make-it-yourself answer; None if it may.

    `duty` is what the need itself says: "ordinary", "guarded" or None. A text without a space is taken for a name.

    >>> guarded(["door-spring", "torsion spring of the garage's big door"], None).duty
    'garage door'
    >>> guarded(["lid", "must lift a 250 g lid"], None) is None
    True
    """
    prose = mentions(text for text in need_words if _is_prose(text))
    named = mentions(text for text in need_words if not _is_prose(text))
    standing = list(dict.fromkeys((*_standing(prose), *_standing_in_names(named, prose))))
    if sure := _surest(standing):
        return _guarded_by_words(sure, duty)
    doubt = _doubt(standing, prose)
    if duty == "guarded":
        return _guarded_by_the_file(_BY_NAME[doubt.mark.duty] if doubt else None)
    return _asked(doubt) if doubt and duty is None else None


def _is_prose(text: str) -> bool:
    return len(text.split(maxsplit=1)) > 1


def _standing(prose: Sequence[Mention]) -> Iterator[Mention]:
    """The dangers that nothing takes away; once a pistol has been called a toy, "the pistol" is that one."""
    explained = {(mention.mark.duty, word) for mention in prose if _explains(mention) for word in mention.words}
    steam = any(mention.mark.role is Role.REAL for mention in prose)
    for mention in prose:
        if mention.mark.duty == "pressure relief" and steam:
            yield replace(mention, set_aside=False)
        elif not mention.set_aside and not _is_said(mention, explained):
            yield mention


def _is_said(mention: Mention, explained: set[tuple[str, str]]) -> bool:
    """Whether the need has said what it means by the phrase; a toy's explanation holds for every duty."""
    said = ({("", word), (mention.mark.duty, word)} & explained for word in mention.words)
    return mention.mark.role in (Role.SURE, Role.WHOLE) and all(said)


def _explains(mention: Mention) -> bool:
    if mention.set_aside:
        return mention.of_a_toy
    return mention.mark.role in (Role.TOY, Role.HARMLESS) and len(mention.words) > 1


def _standing_in_names(named: Sequence[Mention], prose: Sequence[Mention]) -> Iterator[Mention]:
    """The dangers in names that the sentences do not explain as harmless."""
    things = {mention.mark for mention in prose if _is_thing(mention)}
    explained = {mention.mark.duty for mention in prose if mention.set_aside}
    for mention in named:
        harmless = mention.mark.duty in explained or any(disarms(it, mention.mark) for it in things)
        if not mention.set_aside and not harmless:
            yield replace(mention, sentence=_ANY_SENTENCE)


def _is_thing(mention: Mention) -> bool:
    return mention.mark.role in THINGS and not mention.set_aside


def _surest(standing: Sequence[Mention]) -> Mention | None:
    """The longest phrase that tells a duty by itself, or half a pair that does."""
    sure = [mention for mention in standing if mention.mark.role is Role.SURE]
    together = [part for part, same_sentence in _pairs(standing) if same_sentence and not _asks(part.mark)]
    return max(sure or together, key=lambda mention: len(mention.words), default=None)


def _doubt(standing: Sequence[Mention], prose: Sequence[Mention]) -> Mention | None:
    """The first phrase that leaves a doubt which nothing in the need takes away."""
    doubtful = [m for m in standing if m.mark.role is Role.DOUBTFUL and (m.bare or m.mark.compound)]
    apart = [part for part, same_sentence in _pairs(standing) if _asks(part.mark) or not same_sentence]
    things = {(mention.mark, mention.sentence) for mention in prose if _is_thing(mention)}
    for mention in (*doubtful, *apart):
        if not any(_answers(thing, sentence, mention) for thing, sentence in things):
            return mention
    return None


def _answers(thing: Mark, sentence: int, doubt: Mention) -> bool:
    """Whether a harmless thing that a sentence names takes a doubt away; a household thing does in its own sentence."""
    near = thing.role is not Role.HOUSEHOLD or doubt.sentence in (sentence, _ANY_SENTENCE)
    return near and disarms(thing, doubt.mark)


def _pairs(standing: Iterable[Mention]) -> Iterator[tuple[Mention, bool]]:
    """The parts whose wholes are named too, and whether in the same sentence."""
    wholes: dict[tuple[str, int], set[int]] = {}
    parts: list[Mention] = []
    for mention in standing:
        if mention.mark.role is Role.WHOLE:
            wholes.setdefault((mention.mark.duty, mention.mark.pair), set()).add(mention.sentence)
        elif mention.mark.role is Role.PART:
            parts.append(mention)
    for part in parts:
        if found := wholes.get((part.mark.duty, part.mark.pair)):
            yield part, part.sentence in found or _ANY_SENTENCE in found or part.sentence == _ANY_SENTENCE


def _asks(mark: Mark) -> bool:
    return _BY_NAME[mark.duty].pairs[mark.pair].asks


def _guarded_by_words(sure: Mention, stated: str | None) -> Guarded:
    duty = _BY_NAME[sure.mark.duty]
    why = f'The words "{" ".join(sure.words)}" point at a guarded duty ({duty.name}): {_harm(duty)}.'
    if stated == "ordinary":
        why += " The need says `duty: ordinary`, but words as plain as these are not set aside by it."
    return Guarded(duty.name, why, _go(duty))


def _guarded_by_the_file(likely: Duty | None) -> Guarded:
    if likely:
        return Guarded(
            likely.name, f"The need is marked `duty: guarded` ({likely.name}): {_harm(likely)}.", _go(likely)
        )
    why = "The need is marked `duty: guarded`: if it fails, someone can be hurt."
    return Guarded("marked guarded in the need", why, f"the maker, or a licensed person of the trade. {_LOCAL_CODES}")


def _asked(doubt: Mention) -> Guarded:
    duty = _BY_NAME[doubt.mark.duty]
    words = " ".join(doubt.words)
    why = (
        f'The word{"s" if len(doubt.words) > 1 else ""} "{words}" may point at a guarded duty ({duty.name}): '
        f"{_harm(duty)}. Could this spring's failure do that? "
        "Write `duty: ordinary` in the need if not, `duty: guarded` if it could."
    )
    return Guarded(duty.name, why, _go(duty), asks=True)


def _harm(duty: Duty) -> str:
    return f"if it fails, {duty.harm}"


def _go(duty: Duty) -> str:
    return f"{duty.where_to_go}. {_LOCAL_CODES}"
