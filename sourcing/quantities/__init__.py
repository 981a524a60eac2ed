"""Figures as people write them ("1/32 in", "9 N ± 15 %", "MWG 20") made into numbers, and numbers made into text.

Inside the program every number is in mm, N, N/mm, MPa, degC, g or days; this room is the only one that knows other
units. It knows nothing of files: a figure that cannot be read raises `QuantityError`, and the reader adds the place.

    values.py     Wanted, Money, QuantityError
    kinds.py      the kinds of figures and their units
    gauges.py     wire gauge numbers
    grammar.py    how one figure is written
    plain.py      text -> one number
    wanted.py     text -> a number with its tolerance, a range, a bound
    mistakes/     why a text could not be read, and what comes nearest
    showing.py    numbers -> text
    at_the_bench.py   numbers -> text that is cut, weighed or typed by
    rounding.py   numbers in plain decimals
"""

from sourcing.quantities.at_the_bench import (
    show_block,
    show_mass,
    show_stop,
    show_weight,
    typed_force,
    typed_length,
)
from sourcing.quantities.plain import (
    angle_deg,
    angular_rate_n_mm_per_deg,
    duration_days,
    force_n,
    fraction,
    leg_angle_deg,
    length_mm,
    mass_g,
    money,
    number,
    rate_n_per_mm,
    stress_mpa,
    temperature_c,
    torque_n_mm,
    whole_number,
    wire_diameter_mm,
)
from sourcing.quantities.showing import (
    show_angle,
    show_angular_rate,
    show_cycles,
    show_days,
    show_diameter,
    show_energy,
    show_force,
    show_length,
    show_money,
    show_rate,
    show_stress,
    show_temperature,
    show_torque,
    show_wanted,
    show_wire,
    show_wire_length,
)
from sourcing.quantities.values import Money, QuantityError, Wanted, above_zero, at_least_zero
from sourcing.quantities.wanted import (
    wanted_angle_deg,
    wanted_angular_rate_n_mm_per_deg,
    wanted_direction_deg,
    wanted_force_n,
    wanted_length_mm,
    wanted_rate_n_per_mm,
    wanted_torque_n_mm,
    wanted_wire_diameter_mm,
)

__all__ = [
    "Money",
    "QuantityError",
    "Wanted",
    "above_zero",
    "angle_deg",
    "angular_rate_n_mm_per_deg",
    "at_least_zero",
    "duration_days",
    "force_n",
    "fraction",
    "leg_angle_deg",
    "length_mm",
    "mass_g",
    "money",
    "number",
    "rate_n_per_mm",
    "show_angle",
    "show_angular_rate",
    "show_block",
    "show_cycles",
    "show_days",
    "show_diameter",
    "show_energy",
    "show_force",
    "show_length",
    "show_mass",
    "show_money",
    "show_rate",
    "show_stop",
    "show_stress",
    "show_temperature",
    "show_torque",
    "show_wanted",
    "show_weight",
    "show_wire",
    "show_wire_length",
    "stress_mpa",
    "temperature_c",
    "torque_n_mm",
    "typed_force",
    "typed_length",
    "wanted_angle_deg",
    "wanted_angular_rate_n_mm_per_deg",
    "wanted_direction_deg",
    "wanted_force_n",
    "wanted_length_mm",
    "wanted_rate_n_per_mm",
    "wanted_torque_n_mm",
    "wanted_wire_diameter_mm",
    "whole_number",
    "wire_diameter_mm",
]
