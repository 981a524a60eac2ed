"""What is done with the old spring before a new one is wound: sentences for the head of the bench's list."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.need.model import Need
from sourcing.quantities import show_angle, show_energy, show_length
from sourcing.springs.hands import SEEN
from sourcing.springs.model import ExtensionSpring, Hand, Hooks, Spring, TorsionSpring
from sourcing.springs.stored import stored_energy_n_mm

THROWS_HARD_N_MM = 1000.0
"""A spring that holds so much throws itself hard when it is let go (common practice, no source)."""

_THROWS_HARD = {"mm": "1 J", "inch": "9 in·lbf (1 J)"}


def old_spring(spring: Spring, need: Need, units: str, hand_taken: Hand | None = None) -> Iterator[str]:
    """What is noted of the old spring, and how it is let down; `spring` is the one wanted in its place.

    `hand_taken`: the hand for which a mandrel was made though the need gives none.
    """
    yield (
        "Photograph the old spring in place and mark both ends with where each sits. "
        f"{_its_hand(spring, need, hand_taken)}Keep every piece until the new one works."
    )
    yield f"Let it down slowly and captive, eye protection on: {_held_by(spring, need)}. {_holds(spring, need, units)}"


def _its_hand(spring: Spring, need: Need, hand_taken: Hand | None) -> str:
    """How its hand is seen, and which one is wanted; nothing of a double spring, which has both."""
    if isinstance(spring, TorsionSpring) and spring.bodies > 1:
        return ""
    if need.hand:
        wanted = f"the need says {need.hand}-hand, so see that the old one is."
    elif hand_taken:
        wanted = f"no hand was said, and the mandrel is made for {hand_taken}-hand: see that the old one is."
    else:
        wanted = "no hand was said, so wind the new one the same way."
    return f"Note its hand ({SEEN}): {wanted} "


def _held_by(spring: Spring, need: Need) -> str:
    match spring:
        case ExtensionSpring():
            plugged = spring.hooks is Hooks.THREADED_PLUG
            ends, free = ("the eyes of both its plugs", "take it off") if plugged else ("both its hooks", "unhook it")
            return f"a cord tied through {ends} and a bag or cloth over it, a second loop of cord to {free}"
        case TorsionSpring():
            coil = "its coil on the rod, " if need.pocket.rod_mm is not None else ""
            return f"{coil}a clamp or pliers on the leg that is loaded, a bag or cloth over it"
        case _:
            return "a cord through it or a clamp across it, and a bag or cloth over it, until it is slack"


def _holds(spring: Spring, need: Need, units: str) -> str:
    """What the wanted spring would hold in its place."""
    first, last = _worked_between(spring, need)

    def show(at: float) -> str:
        return show_angle(at) if isinstance(spring, TorsionSpring) else show_length(at, units)

    fitted, most = (stored_energy_n_mm(spring, at) for at in (first, last))
    holds = f"{show_energy(most, units)} at {show(last)}"
    if fitted > 0.0 and first != last:
        holds = f"{show_energy(fitted, units)} as fitted ({show(first)}) and {holds}"
    hard = (
        f" From about {_THROWS_HARD[units]} on it is thrown hard (common practice, no source): keep out of its line."
        if most >= THROWS_HARD_N_MM
        else ""
    )
    return f"Whole and as strong as the new one it holds {holds}.{hard}"


def _worked_between(spring: Spring, need: Need) -> tuple[float, float]:
    """The lengths, or the angles, at which the spring is loaded least and most."""
    if isinstance(spring, TorsionSpring):
        at = [point.at_deg for point in need.turned]
        return min(at), max(at)
    at = [point.at_mm for point in need.working]
    return (min(at), max(at)) if isinstance(spring, ExtensionSpring) else (max(at), min(at))
