"""The verdict: which option, by which rule, and what would change it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sourcing import safety
from sourcing.materials.model import Material
from sourcing.materials.plating import HYDROGEN, better_plated
from sourcing.need.model import Need
from sourcing.stock.model import Bench, Catalogue, StockSpring
from sourcing.verdict.notes import notes
from sourcing.verdict.options import NO_SUCH_SPRING, Option, all_options
from sourcing.verdict.rules import RULES, Choices, Rule
from sourcing.verdict.sentence import in_one_sentence
from sourcing.verdict.would_change import would_change
from sourcing.winding.best import Winding, best_plan
from sourcing.winding.model import Refusal, WindingPlan

GUARDED_RULES = ("guarded", "duty-in-doubt")
"""The rules that end in none before anything is judged: certain, and while the need has a question to answer."""


@dataclass(frozen=True, slots=True)
class Because:
    """One rule and what it said, the deciding one first."""

    rule: str
    why: str


@dataclass(frozen=True, slots=True)
class Verdict:
    """The answer to a need.

    `chosen` is None where nothing can be recommended; `options` are best first; `winding` is what each wire can do,
    None where nothing was judged; `notes` tell what was not judged and what was assumed; `further_off` counts the
    springs that are no option, because they are outside the ranges of the need and not among the nearest.
    """

    need: Need
    bench: Bench
    chosen: Option | None
    sentence: str
    because: tuple[Because, ...]
    cautions: tuple[str, ...]
    would_change: tuple[str, ...] = ()
    options: tuple[Option, ...] = ()
    winding: Winding | None = None
    notes: tuple[str, ...] = ()
    further_off: int = 0

    @property
    def option(self) -> str:
        """The word of the chosen option, "none" where there is none."""
        return "none" if self.chosen is None else self.chosen.option

    @property
    def plan(self) -> WindingPlan | None:
        """The winding plan, where winding was chosen."""
        return None if self.chosen is None else self.chosen.plan

    @property
    def wires_refused(self) -> tuple[tuple[str, Refusal], ...]:
        """The wires that do not serve, each by its name with the reason."""
        results = () if self.winding is None else self.winding.results
        return tuple(
            (each.wire.id or f"{each.wire.wire_diameter_mm:g} mm wire to buy", each.result)
            for each in results
            if isinstance(each.result, Refusal)
        )


def words_of(need: Need) -> tuple[str, ...]:
    """The texts of a need from which its duty is told."""
    return tuple(word for word in (need.job, need.what, need.note) if word)


def cautions_for(need: Need, plan: WindingPlan | None, stock: StockSpring | None = None) -> tuple[str, ...]:
    """The cautions of fitting a spring in this need: those of its wish, of the plan's wire and of the spring's."""
    wire, taken = plan and plan.finished.spring.material, stock and stock.spring.material
    named = (word for material in (need.material, wire, taken) if material for word in _names_of(material))
    *before, last = safety.fitting_cautions((*words_of(need), *named), need.surroundings)
    return (*before, *_of_plating(need, (wire, taken)), last)


def _of_plating(need: Need, springs_of: Iterable[Material | None]) -> Iterator[str]:
    """Where zinc would keep the rust off, somebody may think of plating the spring: what that costs."""
    for material in springs_of:
        if material is not None and any(better_plated(material, where) for where in need.surroundings):
            yield f"Bought zinc plated, {material.name} would stand this longer. {HYDROGEN}"
            return


def _names_of(material: Material) -> tuple[str, ...]:
    """A material by its name and its grade; one of the keeper's own also by what is noted of it."""
    return material.name, material.grade if material.standard else material.remark or ""


def guard_of(need: Need) -> safety.Guarded | None:
    """Why a need may hurt someone, or None for an ordinary one."""
    return safety.guarded(words_of(need), need.duty)


def guarded_refusal(guard: safety.Guarded) -> Refusal:
    """Why a guarded need gets no make-it-yourself answer, and where to go instead."""
    certain, asks = GUARDED_RULES
    return Refusal(asks if guard.asks else certain, f"{guard.why} Go to {guard.where_to_go}")


def _guarded_verdict(need: Need, bench: Bench, guard: safety.Guarded) -> Verdict:
    refusal = guarded_refusal(guard)
    because = (Because(refusal.rule, refusal.why),)
    sentence = f"Nothing is recommended: this is a guarded duty ({guard.duty})."
    if guard.asks:
        sentence = f"Nothing is recommended until the need answers one question ({guard.duty}, or not)."
    return Verdict(need, bench, None, sentence, because, safety.GUARDED_CAUTIONS)


def decide(need: Need, catalogue: Catalogue) -> Verdict:
    """Judge every way to come by the spring and let the rules choose. A guarded need always ends in none."""
    bench = catalogue.bench
    if (guard := guard_of(need)) is not None:
        return _guarded_verdict(need, bench, guard)
    winding = best_plan(need, catalogue.spools, bench)
    options = all_options(catalogue, need, winding)
    choices = Choices(need, bench, options)
    chosen, because = _choose(choices, winding.refusal)
    return Verdict(
        need,
        bench,
        chosen,
        in_one_sentence(choices, chosen, winding.refusal),
        because,
        _cautions(need, chosen),
        would_change(choices, chosen),
        options,
        winding,
        notes(need, bench, bool(winding.plans)),
        catalogue.further_off,
    )


def _cautions(need: Need, chosen: Option | None) -> tuple[str, ...]:
    """Those of fitting it, and before them those of bending what is adapted."""
    fitting = cautions_for(need, chosen and chosen.plan, chosen and chosen.stock)
    bending = safety.bending_cautions()[:-1] if chosen is not None and chosen.adapted is not None else ()
    return (*bending, *fitting)


def _choose(choices: Choices, refusal: Refusal | None) -> tuple[Option | None, tuple[Because, ...]]:
    passed: list[Because] = []
    for rule in RULES:
        option = rule.finds(choices)
        if option is not None:
            return option, (Because(rule.name, rule.why), *passed)
        passed.append(Because(rule.name, _passed(rule, refusal)))
    if refusal is not None and refusal.rule in NO_SUCH_SPRING:
        return None, (Because(refusal.rule, refusal.why),)
    return None, (Because("nothing-serves", "no rule found an option"), *passed)


def _passed(rule: Rule, refusal: Refusal | None) -> str:
    if rule.name == "wire-to-buy" and refusal is not None:
        return f"{rule.otherwise} ({refusal.why})"
    return rule.otherwise
