"""The rules that choose among the options: one table, read from the top; the first that finds an option decides."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from sourcing.need.model import Need
from sourcing.stock.model import Bench
from sourcing.verdict.options import Option


@dataclass(frozen=True, slots=True)
class Choices:
    """What the rules choose among; `options` best first."""

    need: Need
    bench: Bench
    options: tuple[Option, ...]

    def sure(self, option: Option) -> bool:
        """Whether the option's chance reaches the bench's `prefer: least_chance`; one that is open does not."""
        return option.chance >= self.bench.least_chance and not option.unsettled

    def of(self, *names: str, fits: str) -> tuple[Option, ...]:
        """The options of these names that fit so, without those that rest on wire nobody has yet."""
        return tuple(o for o in self.options if o.option in names and o.fits == fits and not o.wire_to_buy)

    def total_cost(self, option: Option) -> float:
        """Money and bench hours in the bench's currency; infinite where a part is not known or in other money."""
        hourly = self.bench.hour_value
        if option.cost is None or option.cost.currency != self.bench.currency or hourly.currency != self.bench.currency:
            return float("inf")
        return option.cost.amount + (option.hours or 0.0) * hourly.amount


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule: its name, the option it finds (or None), why it decides, and what is said where it finds none."""

    name: str
    finds: Callable[[Choices], Option | None]
    why: str
    otherwise: str


def _first(options: Iterable[Option]) -> Option | None:
    return next(iter(options), None)


def _drawer_fits(choices: Choices) -> Option | None:
    return _first(o for o in choices.of("drawer", fits="yes") if choices.sure(o))


def _cheapest_in_time(choices: Choices) -> Option | None:
    in_time = [
        o for o in choices.of("adapted", "bought", "wound", fits="yes") if choices.sure(o) and o.in_time(choices.need)
    ]
    best_wound = next((o for o in in_time if o.option == "wound"), None)
    rivals = (o for o in in_time if o.option != "wound" or o is best_wound)
    return min(rivals, key=lambda o: (choices.total_cost(o), o.hours or 0.0), default=None)


def _drawer_near(choices: Choices) -> Option | None:
    return _first(o for o in choices.of("drawer", fits="near") if choices.sure(o))


def _ordered_in_time(choices: Choices) -> Option | None:
    return _first(o for o in choices.of("ordered", fits="yes") if _comes_when_needed(choices, o))


def _comes_when_needed(choices: Choices, option: Option) -> bool:
    return choices.need.needed_within_days is not None and option.in_time(choices.need) and choices.sure(option)


def _late(choices: Choices) -> Option | None:
    late = (o for o in choices.of("bought", "wound", fits="yes") if choices.sure(o))
    return min(late, key=lambda o: (float("inf") if o.days is None else o.days, choices.total_cost(o)), default=None)


def _near_but_sure(choices: Choices) -> Option | None:
    return _first(o for o in choices.of("adapted", "wound", "bought", fits="near") if choices.sure(o))


def _doubtful(choices: Choices) -> Option | None:
    return max(choices.of("drawer", "adapted", "wound", "bought", fits="yes"), key=lambda o: o.chance, default=None)


def _wire_to_buy(choices: Choices) -> Option | None:
    return _first(o for o in choices.options if o.wire_to_buy and o.fits == "yes")


def _ordered(choices: Choices) -> Option | None:
    return _first(choices.of("ordered", fits="yes"))


def _nearest(choices: Choices) -> Option | None:
    return _first(choices.of("drawer", "adapted", "wound", "bought", fits="near"))


RULES = (
    Rule(
        "drawer-fits",
        _drawer_fits,
        "it fits, its chance reaches the least wanted, it is here, and it costs nothing",
        "nothing in the drawer fits with the least chance wanted",
    ),
    Rule(
        "least-cost-in-time",
        _cheapest_in_time,
        "of what fits surely enough and comes in time, it costs least, bench hours counted at their value; of several "
        "wires here, the one that serves best stands for all",
        "nothing that can be bought, or wound from wire on hand, fits surely enough and comes in time",
    ),
    Rule(
        "drawer-near",
        _drawer_near,
        "it is here and meets every figure; only a soft limit speaks against it",
        "nothing in the drawer is near with the least chance wanted",
    ),
    Rule(
        "ordered-in-time",
        _ordered_in_time,
        "nothing else that fits comes in time, and a spring maker's does",
        "no spring maker is named whose spring comes within the days wanted",
    ),
    Rule(
        "fits-but-late",
        _late,
        "it fits surely enough, though not within the days wanted",
        "nothing fits surely enough even with more time",
    ),
    Rule(
        "near-but-sure",
        _near_but_sure,
        "it meets every figure; only a soft limit speaks against it",
        "nothing bought or wound is near with the least chance wanted",
    ),
    Rule(
        "fits-with-doubt",
        _doubtful,
        "it fits on paper, though its chance is open or below the least wanted: check it on the scale before you rely "
        "on it",
        "nothing fits even on paper",
    ),
    Rule(
        "wire-to-buy",
        _wire_to_buy,
        "wound from wire of a size that is not on a spool here, it would fit",
        "no size of wire that could be bought would serve by hand",
    ),
    Rule(
        "ordered",
        _ordered,
        "nothing at hand serves, and a spring maker is named",
        "no spring maker is named in bench.yaml",
    ),
    Rule(
        "nearest",
        _nearest,
        "nothing fits; this is outside a tolerance but inside twice it, or outside a soft limit: try it with care",
        "nothing comes near",
    ),
)
