"""What a sheet says before the work: cautions for winding, for heating, and for what this need touches.

The sentences are our own wording of common workshop practice (common practice, no source). Which of them apply is
told from the words of the need and from its surroundings; in doubt a caution is given, for one too many does no harm.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sourcing.safety.words import phrases, ways_to_write, words_of

LOCAL_CODES = "Local codes, the rules of your workshop and licensed practice come before anything said here."

_WINDING = (
    "Wear eye protection, and so must whoever looks on: wire under bending stores energy and whips.",
    "Hold both ends of the wire, one fixed and one gripped in a guide or in pliers, and let go of neither.",
    "Point the free end towards no one, and keep your face out of its path.",
    "Ease the crank or the chuck back and do not let it go: the coil drives it.",
    "Cut ends fly: hold both sides of a cut, or cut under a cloth.",
)
_GLOVES = "Wear gloves for handling cut wire, but never near a turning drill or lathe."
_TURNING = (
    "No loose sleeves, rings or hair near the turning mandrel; lowest speed, and a stop within reach.",
    "Never guide the wire with a hand close to the coil: it can be drawn in.",
)
_HEATING = (
    "Wipe the wire free of oil before heating: oily wire in an oven smokes and can catch fire.",
    "No food in the oven beside the spring, nor until the oven has cooled and been wiped out.",
    "Nothing printed in plastic goes in an oven: take the spring off a printed mandrel first.",
    "See to ventilation while the oven is hot.",
    "Hot metal looks like cold metal: use tongs, and let it cool where no one will touch it.",
)
RELEASING = (
    "Let the old spring down captive, on a rod, in a bag or in a clamp, with eye protection on; "
    "do the same where the new one goes in under load."
)
"""What every need is told; a winding sheet has it among its steps, with the figures of its spring."""


GUARDED_CAUTIONS = (
    "Leave the spring and what holds it as they are: a spring under load lets go all at once, and no part of such a "
    "duty is tried out by hand.",
    LOCAL_CODES,
)
"""What a guarded need is told in place of cautions for the work, which is not done here."""


@dataclass(frozen=True, slots=True)
class _Caution:
    """A caution with the words of a need, or the surroundings, that call for it."""

    sentence: str
    called_by: str
    surroundings: str | None = None


_FOOD = (
    "Food contact: use stainless wire of a grade fit for food, nothing plated or oily, no brass, bronze or "
    "beryllium copper; wash it, and see that no broken coil can reach the food."
)
CARRYING_CURRENT = (
    "A spring that carries current must be of the metal it was, with the same wire diameter and plating: "
    "plain steel wire there gets hot, loses its force and makes a poor contact."
)

CHOOSING_WIRE = (CARRYING_CURRENT, _FOOD)
"""The cautions that say which wire a spring is made of, so that they come before any wire is named."""

_FITTING = (
    _Caution(
        _FOOD,
        """
        food, kitchen utensil|gadget|machine|aid, coffee, tea, drink, drinking, grinder, pepper|salt mill,
        juice, juicer, milk, water filter, cooking, cooker, baking, bread, biscuit, cake, ice cream, scoop,
        tong, can|tin|bottle opener, salad, meat, cheese, butter, egg, spice, sugar, garlic, bowl, cup, jug,
        flask, corkscrew, whisk, mixer, blender, toaster""",
        surroundings="food",
    ),
    _Caution(
        "Heat: a hot spring loses force, and every wire has its limit; choose a material for the highest temperature, "
        "and let the thing cool before hands go in.",
        """
        heat, hot, heater, heating, oven, toaster, stove, kiln, furnace, iron, hob, grill, boiler, kettle, exhaust,
        engine, soldering, glue gun, waffle, hair dryer, lamp holder, candle, fire, fire place, radiator, burner,
        thermostat, steam""",
    ),
    _Caution(
        "Live electrical parts: unplug it, take the batteries out and let capacitors discharge before it is opened; "
        "a loose spring can bridge what must stay apart. Work on the mains is for a licensed person.",
        """
        electric, electrical, electronic, mains, live, switch, socket, plug, fuse, lamp, bulb, motor, cable, wiring,
        volt, battery, charger, radio, amplifier, toaster, kettle, mixer, drill, vacuum cleaner, hair dryer, heater,
        contact, relay, thermostat, appliance, sewing machine, printer, microwave, torch, transformer, capacitor""",
    ),
    _Caution(
        CARRYING_CURRENT,
        """
        contact, battery, cell, tail cap, brush spring, carbon brush, carry current, carry the current, conduct,
        conducting, current, terminal, earthing, grounding, fuse holder, lamp holder, slip ring, relay,
        telegraph key""",
    ),
    _Caution(
        "Beryllium copper: no grinding, no sanding, no filing, for its dust can harm the lungs for life. "
        "Cut it with cutters only and wipe up with a wet cloth.",
        "beryllium, becu, cube2, c17200, cw101c",
    ),
    _Caution(
        "An old plated spring, above all a yellowish or iridescent one, may be cadmium-plated: no heat, no grinding, "
        "no sanding; wash your hands, keep it from food, and hand it in as hazardous waste.",
        """
        cadmium, plated, plating, yellowish, iridescent, passivated, chromated, surplus, military, aircraft, aviation,
        salvage, salvaged, valve radio, vintage, antique, old, classic, war time""",
    ),
)


def winding_cautions(heated: bool, turning: bool) -> tuple[str, ...]:
    """What leads a winding sheet. `heated`: the coil goes in an oven; `turning`: a drill or a lathe turns the mandrel.

    >>> winding_cautions(heated=False, turning=False)[0]
    'Wear eye protection, and so must whoever looks on: wire under bending stores energy and whips.'
    """
    return (*_WINDING, _GLOVES, *(_TURNING if turning else ()), *(_HEATING if heated else ()), LOCAL_CODES)


def bending_cautions() -> tuple[str, ...]:
    """What leads the bending of a hook that is wound already: eyes, cut ends, gloves.

    >>> len(bending_cautions())
    4
    """
    return (_WINDING[0], _WINDING[-1], _GLOVES, LOCAL_CODES)


def fitting_cautions(words: Sequence[str], surroundings: Sequence[str]) -> tuple[str, ...]:
    """The cautions that the texts of a need (and its material's name) and its surroundings call for.

    >>> [caution.split(":")[0] for caution in fitting_cautions(["tube clip"], ["indoor-dry", "food"])[1:-1]]
    ['Food contact']
    """
    spoken = {phrase for text in words for phrase in _short_phrases(words_of(text, whole=True))}
    called = (
        caution.sentence
        for caution in _FITTING
        if caution.surroundings in surroundings
        or any(spoken & ways_to_write(phrase) for phrase in phrases(caution.called_by))
    )
    return (RELEASING, *called, LOCAL_CODES)


def _short_phrases(words: Sequence[str], longest: int = 3) -> Iterator[tuple[str, ...]]:
    for length in range(1, longest + 1):
        yield from zip(*(words[start:] for start in range(length)), strict=False)
