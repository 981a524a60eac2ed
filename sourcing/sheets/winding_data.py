"""The winding sheet as JSON (design section 9)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from typing import TYPE_CHECKING

from sourcing.need.model import Need
from sourcing.safety import GUARDED_CAUTIONS
from sourcing.sheets.data import workings_key
from sourcing.verdict.verdict import GUARDED_RULES, cautions_for
from sourcing.winding.advice import trial_first
from sourcing.winding.model import Acceptance, Made, Mandrel, Refusal, Serves, WindingPlan
from sourcing.winding.saving.coil import Saved
from sourcing.winding.serving_words import what_is_off, what_serves

if TYPE_CHECKING:
    from sourcing.figures.working import Working

Document = dict[str, object]


def plan_document(plan: WindingPlan, fitting: Sequence[str] = ()) -> Document:
    """A winding plan; `fitting` are the cautions of its place, where no verdict round it tells them."""
    return {
        "wire": plan.wire,
        "material": plan.material,
        "wire_diameter_mm": plan.wire_diameter_mm,
        "cut_length_mm": plan.cut_length_mm,
        "coil_length_mm": plan.coil_length_mm,
        "wire_left_mm": plan.wire_left_mm,
        "mandrel": _mandrel_document(plan.mandrel),
        "mandrel_choices": [{**asdict(each), "serves": each.serves} for each in plan.choices] or None,
        "turns_to_wind": plan.turns_to_wind,
        "turns_to_spare": plan.turns_to_spare,
        "pitch_on_mandrel_mm": plan.pitch_on_mandrel_mm,
        "turns_run_back": plan.turns_run_back,
        "crank_moment_n_mm": plan.crank_moment_n_mm,
        "crank": asdict(plan.crank),
        "pull_n": plan.pull_n,
        "heat": asdict(plan.heat),
        "finished": made_document(plan.finished),
        "after_heat": None if plan.after_heat is None else made_document(plan.after_heat),
        "serves": [_serves_document(each) for each in plan.serves],
        "fits": plan.fit.fits,
        "off": list(what_is_off(plan)),
        "answer": what_serves(plan),
        "accept": [acceptance_document(row) for row in plan.accept],
        "goes_in": {
            "stick_out_mm": plan.goes_in.stick_out_mm,
            "cover_force_n": plan.goes_in.cover_force_n,
            "said": list(plan.goes_in.said),
        },
        "taken": list(plan.taken),
        "steps": list(plan.steps),
        "cautions": list(dict.fromkeys((*plan.cautions, *fitting))),
        "never": list(plan.never),
        "notes": list(plan.notes),
        "trial_first": asdict(trial_first(plan)),
        "unsettled": plan.unsettled,
        "label_refuted": plan.label_refuted,
        "chance_first_try": plan.tries.first,
        "chance_by_second_try": plan.tries.by_second,
        "tries_expected": plan.tries_expected,
    }


def _serves_document(serves: Serves) -> Document:
    """An interval of mean diameters that serve; a cone's says of which end."""
    figure = f"mean_diameter_{serves.end}_mm" if serves.end else "mean_diameter_mm"
    return {f"{figure}_low": serves.low_mm, f"{figure}_high": serves.high_mm}


def made_document(made: Made) -> Document:
    """The figures of a spring as describe gives them, with the bands that are known."""
    figures: Document = asdict(made.figures)
    del figures["at"]
    for name, band in made.bands.items():
        figures[f"{name}_low"], figures[f"{name}_high"] = band.low, band.high
    return figures


def acceptance_document(row: Acceptance) -> Document:
    """One check of the finished spring."""
    return {"figure": row.figure, "low": row.low, "high": row.high, "if_not": row.if_not}


def answer_document(answer: WindingPlan | Refusal, need: Need, workings: Sequence[Working] | None = None) -> Document:
    """A winding plan, with its workings where they were asked for; or why there is none."""
    if isinstance(answer, WindingPlan):
        return {**plan_document(answer, cautions_for(need, answer)), **workings_key(workings)}
    cautions = GUARDED_CAUTIONS if answer.rule in GUARDED_RULES else ()
    return {"refused": {"rule": answer.rule, "why": answer.why}, "cautions": list(cautions)}


def _mandrel_document(mandrel: Mandrel) -> Document:
    return {
        "kind": mandrel.kind,
        "diameter_mm": mandrel.diameter_mm,
        "profile": [asdict(point) for point in mandrel.profile],
        "rod_mm": mandrel.rod_mm,
    }


def saved_document(saved: Saved, wound: WindingPlan) -> Document:
    """What to do with a coil that came out otherwise, and what it is taken to have been wound of."""
    return {
        "wire": wound.wire,
        "wire_diameter_mm": wound.wire_diameter_mm,
        "mandrel": _mandrel_document(wound.mandrel),
        "turns_wound": wound.turns_to_wind,
        "answer": saved.answer,
        "said": list(saved.said),
        "rate_kept": saved.rate_kept,
        **_becomes(saved),
        "fits": saved.fit and saved.fit.fits,
        "chance": saved.fit and saved.fit.chance,
        "limits": None if saved.fit is None else [asdict(limit) for limit in saved.fit.limits],
        "next_mandrel": None if saved.next_mandrel is None else asdict(saved.next_mandrel),
        "next_stop_angle_deg": saved.next_stop_deg,
    }


def _becomes(saved: Saved) -> Document:
    """The figures of what a coil becomes that its kind has; null where that is not known yet."""
    names = ("mean_diameter_mm", "mean_diameter_small_mm", "mean_diameter_large_mm", "active_coils", "total_coils")
    more = ("free_length_mm", "initial_tension_n", "free_angle_deg")
    known, spring = saved.fit is not None, saved.spring
    return {name: getattr(spring, name) if known else None for name in (*names, *more) if hasattr(spring, name)}
