"""How long a spring lasts, as a class of cycles in words: never a number, for none would be true.

Who made a spring decides how far its life may be off: `Making`. What a stress does only once is `steady`, what it does
time after time `life`; both end in a `Word`.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import inf

from sourcing.figures import formula
from sourcing.materials.model import Material
from sourcing.springs.fatigue import FEWEST_CYCLES, MOST_CYCLES, cycles_borne, ultimate_mpa
from sourcing.springs.strength import Place, Presetting, permissible, permissible_at_mpa, permissible_stress_mpa


class Word(StrEnum):
    """What becomes of a spring, worst last."""

    WELL_WITHIN = "well within its limits"
    MILLIONS = "millions of cycles"
    HUNDREDS_OF_THOUSANDS = "hundreds of thousands of cycles"
    TENS_OF_THOUSANDS = "tens of thousands of cycles"
    THOUSANDS = "thousands of cycles"
    FEW = "fewer than a thousand cycles"
    SETTLES = "settles a little at first"
    WILL_SET = "will take a set"
    WILL_BREAK = "will break"


def badness(word: Word) -> int:
    """How bad a word is among the others.

    >>> max([Word.MILLIONS, Word.WILL_SET, Word.THOUSANDS], key=badness)
    <Word.WILL_SET: 'will take a set'>
    """
    return tuple(Word).index(word)


class Making(StrEnum):
    """Who made a spring."""

    SPRING_MAKER = "from a spring maker"
    UNKNOWN = "of unknown making or past"
    WOUND = "wound at home"
    WOUND_UNHEATED = "wound at home and not stress relieved"

    @property
    def factor(self) -> float:
        """By how much its life may be off, either way.

        Lives of equal springs lie apart by 3 in a maker's tests and by 10 where wire, surface, bends and set are not
        looked after (common practice, no source); an old spring has part of its life behind it besides.
        """
        return 3.0 if self is Making.SPRING_MAKER else 10.0

    @property
    def share(self) -> float:
        """What is left of a life for want of stress relief: a tenth, a class less (assumed).

        The lines of stress over cycles are of springs that were relieved; winding leaves a pull of its own where the
        working stress is greatest.
        """
        return 0.1 if self is Making.WOUND_UNHEATED else 1.0


@dataclass(frozen=True, slots=True)
class Life:
    """How many times a spring is worked before it breaks, as far as can be told, and who made it.

    `cycles` is infinite where no end is known, and 0 where it is fewer than the lines of stress over cycles begin with.
    """

    cycles: float
    making: Making

    @property
    def factor(self) -> float:
        """By how much it may be off, either way."""
        return self.making.factor

    @property
    def word(self) -> Word:
        """Its class. Only a spring maker's is ever called well within its limits: no other is safe for good."""
        if self.cycles == inf and self.making is Making.SPRING_MAKER:
            return Word.WELL_WITHIN
        least = ((1e6, Word.MILLIONS), (1e5, Word.HUNDREDS_OF_THOUSANDS), (1e4, Word.TENS_OF_THOUSANDS))
        thousands = Word.THOUSANDS if self.cycles >= FEWEST_CYCLES else Word.FEW
        return next((word for cycles, word in least if self.cycles >= cycles), thousands)

    @property
    def told(self) -> str:
        """Its class with the factor, in words.

        >>> Life(3e5, Making.WOUND).told
        'hundreds of thousands of cycles, give or take a factor of ten (wound at home)'
        """
        factor = "three" if self.factor == 3.0 else "ten"
        if self.word in (Word.WELL_WITHIN, Word.FEW):
            return str(self.word)
        return f"{self.word}, give or take a factor of {factor} ({self.making})"

    @property
    def as_far_as_known(self) -> bool:
        """Whether the stress is borne as often as anybody has tested."""
        return self.cycles >= MOST_CYCLES * self.making.share

    def serves(self, cycles: float) -> bool:
        """Whether it lasts so many cycles even where it is off by its factor."""
        return self.cycles >= cycles * self.factor

    def may_serve(self, cycles: float) -> bool:
        """Whether it lasts so many cycles where it is off by its factor to the good side."""
        return (self.cycles or FEWEST_CYCLES) * self.factor >= cycles


def life(
    place: Place,
    material: Material,
    tensile_strength_mpa: float,
    low_mpa: float,
    high_mpa: float,
    making: Making = Making.UNKNOWN,
) -> Life:
    """The life of a spring whose corrected stress at a place goes from `low_mpa` to `high_mpa` and back.

    In dry air at the temperature of a room; rust, a nick from pliers and heat shorten it, by how much nobody prints.

    >>> from sourcing.materials import find
    >>> life(Place.LENGTH, find("music-wire"), 2270.0, 250.0, 800.0, Making.SPRING_MAKER).word
    <Word.MILLIONS: 'millions of cycles'>
    """
    borne = cycles_borne(place, material, tensile_strength_mpa, low_mpa, high_mpa)
    if making is not Making.SPRING_MAKER:
        borne = min(borne, MOST_CYCLES)
    return Life(cycles_of_making(borne, making.share), making)


@formula(
    "N = s · N_b",
    where={"s": "share", "N_b": "borne"},
    source="assumed: `Making.share`",
)
def cycles_of_making(borne: float, share: float) -> float:
    """How often it is worked where its making leaves a share of the cycles that the lines of relieved springs give.

    >>> cycles_of_making(3e6, 0.1)
    300000.0
    """
    return borne * share


def steady(place: Place, material: Material, tensile_strength_mpa: float, stress_mpa: float) -> Word:
    """What a stress that is there only once, or stays, does at a place; which stress, `permissible` tells.

    >>> from sourcing.materials import find
    >>> [str(steady(Place.HOOK_BENDING, find("music-wire"), 2000.0, stress)) for stress in (1400.0, 1600.0, 2100.0)]
    ['well within its limits', 'will take a set', 'will break']
    """
    if stress_mpa <= permissible_at_mpa(place, material, tensile_strength_mpa):
        return Word.WELL_WITHIN
    pressed = place in (Place.LENGTH, Place.SOLID)
    breaks = not pressed and stress_mpa > ultimate_mpa(place, tensile_strength_mpa)
    return Word.WILL_BREAK if breaks else Word.WILL_SET


def pressed_solid(
    material: Material, tensile_strength_mpa: float, uncorrected_mpa: float, corrected_mpa: float
) -> Word:
    """What pressing a compression spring solid does to it: nothing, a little the first times, or a set for good.

    >>> from sourcing.materials import find
    >>> [str(pressed_solid(find("music-wire"), 2000.0, mpa, 1.1 * mpa)) for mpa in (800.0, 1000.0, 1200.0)]
    ['well within its limits', 'settles a little at first', 'will take a set']
    """
    word = steady(Place.SOLID, material, tensile_strength_mpa, uncorrected_mpa)
    keeps = permissible(Place.SOLID, material, Presetting.NOT_AT_ALL).share
    settles = corrected_mpa > permissible_stress_mpa(keeps, tensile_strength_mpa)
    return Word.SETTLES if word is Word.WELL_WITHIN and settles else word
