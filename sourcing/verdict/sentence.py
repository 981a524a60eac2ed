"""The verdict in one sentence: the doubt where its chance is poor, the deed, and how well it fits."""

from __future__ import annotations

from sourcing.verdict.options import NO_SUCH_SPRING, Option, wound_how
from sourcing.verdict.rules import Choices
from sourcing.winding.model import Refusal
from sourcing.winding.no_room import NO_ROOM_BETWEEN

LIKELY = 0.5
"""A chance below it is one of more misses than hits."""


def in_one_sentence(choices: Choices, chosen: Option | None, refusal: Refusal | None) -> str:
    """What to do, in one sentence; `refusal`: why nothing can be wound."""
    if chosen is None and refusal is not None and refusal.rule in NO_SUCH_SPRING:
        slip = "" if refusal.rule == NO_ROOM_BETWEEN else " See whether a figure of the need is mistyped."
        return f"Nothing can be recommended: {refusal.why}.{slip}"
    if chosen is None:
        return "Nothing can be recommended: nothing listed comes near, and winding it by hand is refused."
    deed, doubt = f"{_deed(choices, chosen)}{_how_well(choices, chosen)}.", _doubt(choices, chosen)
    return f"{doubt}: {deed[0].lower()}{deed[1:]}" if doubt else deed


def _doubt(choices: Choices, option: Option) -> str:
    """What leads the sentence where a chance is poor; empty where none is, or none was worked out."""
    if option.fit is None:
        return ""
    if option.unsettled:
        return f"Wind another trial coil of {option.id} first, for one was too far off to be chance"
    if option.plan is not None and option.plan.label_refuted:
        return f"Measure the wire of {option.id} first, for trial coils agree that it is another than its label says"
    if option.chance < LIKELY:
        return f"This will more likely fail than serve ({_chance(option)})"
    if not choices.sure(option):
        return f"This is not sure to serve ({_chance(option)}; {choices.bench.least_chance:.2f} is wanted)"
    if option.plan is not None and option.plan.tries.first < LIKELY:
        return f"The first try will more likely miss than not ({_chance(option)})"
    return ""


def _chance(option: Option) -> str:
    """The chance that it serves; of a spring that is wound, at the first try and by the second."""
    chance = f"{option.chance:.2f}"
    if option.plan is None or (first := f"{option.plan.tries.first:.2f}") == chance:
        return f"chance {chance}"
    return f"chance {first} at the first try, {chance} by the second"


def _deed(choices: Choices, option: Option) -> str:
    match option.option:
        case "drawer":
            assert option.stock is not None
            where = f" ({option.stock.shelf})" if option.stock.shelf else ""
            count = f"{choices.need.quantity} of " if choices.need.quantity > 1 else ""
            return f"Take {count}{option.id} from the drawer{where}"
        case "adapted":
            assert option.stock is not None
            where = f" from the drawer ({option.stock.shelf})" if option.stock.shelf else " from the drawer"
            return f"Adapt {option.id}{where}: {option.how}"
        case "bought":
            assert option.stock is not None
            lead = f", {option.days:g} days" if option.days is not None else ""
            return f"Buy {option.id} from {option.stock.seller}: {option.how}{lead}"
        case "wound":
            assert option.plan is not None
            count = "Wind it" if choices.need.quantity == 1 else f"Wind {choices.need.quantity} of them"
            return f"{count} {wound_how(option.plan)}"
        case _:
            assert choices.bench.spring_maker is not None
            lead = f", {option.days:g} days" if option.days is not None else ""
            return f"Have it made by {choices.bench.spring_maker.name}{lead}"


def _how_well(choices: Choices, option: Option) -> str:
    if option.fit is None:
        return ""
    doubted = bool(_doubt(choices, option))
    told = [] if option.fit.score is None else [f"score {option.fit.score}"]
    told += [] if doubted else [_chance(option)]
    figures = f" ({', '.join(told)})" if told else ""
    fits = ("on paper it fits" if doubted else "it fits") if option.fits == "yes" else "a near fit"
    broken = "; ".join(limit.why for limit in option.fit.broken)
    first = f"; first {' and '.join(option.fit.to_do)}" if option.fit.to_do else ""
    return f"; {fits}{figures}" + (f": {broken}" if broken else "") + first
