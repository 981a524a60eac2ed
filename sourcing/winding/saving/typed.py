"""A coil as the options of `springwright trial` take it."""

from __future__ import annotations

from sourcing.quantities import typed_force, typed_length
from sourcing.quantities.kinds import MM_PER_INCH
from sourcing.stock.model import Trial


def typed_trial(trial: Trial, units: str) -> str:
    """A trial as it is typed: bare figures in mm and N, or inches and pounds with their units; degrees.

    >>> typed_trial(Trial(6.35, 9.525, turns=11.4, on="printed"), "mm")
    '--mandrel 6.35 --outside 9.525 --turns 11.40 --on printed'
    >>> typed_trial(Trial(6.35, 9.525, turns=11.4), "inch")
    "--mandrel '0.25 in' --outside '0.375 in' --turns 11.40"
    """

    def length(length_mm: float) -> str:
        return typed_length(length_mm, units) if units == "inch" else f"{length_mm:g}"

    words = [f"--mandrel {length(trial.mandrel_mm)} --outside {length(trial.outside_diameter_mm)}"]
    if trial.turns is not None:
        words.append(f"--turns {trial.turns:.2f}")
    if trial.stop_angle_deg is not None and trial.leg_angle_deg is not None:
        words.append(f"--stop-angle {trial.stop_angle_deg:.0f}")
        words.append(f"--leg-angle {trial.leg_angle_deg:g}")
    if trial.pitch_wound_mm is not None and trial.pitch_mm is not None:
        laid_mm = trial.pitch_wound_mm
        pitch_wound = length(round(laid_mm / MM_PER_INCH, 4) * MM_PER_INCH) if units == "inch" else f"{laid_mm:.2f}"
        words.append(f"--pitch-wound {pitch_wound} --pitch {length(trial.pitch_mm)}")
    if trial.initial_tension_n is not None:
        tension = typed_force(trial.initial_tension_n, units) if units == "inch" else f"{trial.initial_tension_n:g}"
        words.append(f"--tension {tension}")
    if trial.heated:
        words.append("--heated yes")
    if trial.on is not None:
        words.append(f"--on {trial.on}")
    return " ".join(words)
