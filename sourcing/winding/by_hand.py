"""What winding asks of the hand: the moment at the crank, the force at its handle, and the bench's limits.

Two moments are told apart. The one that bends the wire springs back when the crank is let go, so that caution and stop
go by it, as they go by the wire's diameter. What turns the mandrel has the pull to overcome besides, so that what may
turn it goes by both together.
"""

from __future__ import annotations

from sourcing.figures import formula
from sourcing.quantities import show_diameter, show_torque
from sourcing.stock.model import Bench, HandWinding
from sourcing.winding import springback
from sourcing.winding.learning import learn
from sourcing.winding.model import Crank, Mandrel, Refusal, Wire
from sourcing.winding.trials import Knowledge

THINNEST_WIRE_MM = 0.08
"""The thinnest wire that a handbook for hand tools winds."""

HAND_LIMIT = "hand-winding-limit"
"""The rule that refuses wire too thick or too strong for the hand."""

USUAL_LIMITS = HandWinding()
"""What is wound by hand where the bench says nothing else."""

N_MM_PER_N_M = 1000.0


@formula(
    "M_c = M + T (m + d) / 2",
    where={"M": "crank_moment_n_mm", "T": "pull_n", "m": "mandrel_mm"},
    source="statics: the wire's plastic moment, and the pull at the radius of the wire's axis",
)
def moment_with_pull_n_mm(crank_moment_n_mm: float, pull_n: float, mandrel_mm: float, wire_diameter_mm: float) -> float:
    """The moment at the crank: to bend the wire, and against the pull.

    >>> round(moment_with_pull_n_mm(401.0, 40.0, 7.0, 1.0))
    561
    """
    return crank_moment_n_mm + pull_n * (mandrel_mm + wire_diameter_mm) / 2


@formula("F_c = M_c / l_c", where={"M_c": "moment_n_mm", "l_c": "handle_mm"}, source="statics")
def force_at_handle_n(moment_n_mm: float, handle_mm: float) -> float:
    """The force that turns a crank at its handle.

    >>> force_at_handle_n(561.0, 100.0)
    5.61
    """
    return moment_n_mm / handle_mm


def crank(known: Knowledge, mandrel: Mandrel, limits: HandWinding, wires: int = 1) -> Crank:
    """What the crank takes where the mandrel is thickest; both halves of a double torsion spring are wound at once."""
    wire_mm, reckoned = known.wire_diameter_mm, known.reckoned_with
    bending_n_mm = wires * springback.plastic_moment_n_mm(reckoned.flow_stress_mpa, wire_mm)
    moment_n_mm = moment_with_pull_n_mm(bending_n_mm, wires * reckoned.pull_n, mandrel.thickest_mm, wire_mm)
    force_n = force_at_handle_n(moment_n_mm, limits.crank_mm)
    drill = wire_mm < limits.vice_and_crank_mm and moment_n_mm < limits.vice_and_crank_n_mm
    return Crank(bending_n_mm, moment_n_mm, limits.crank_mm, force_n, drill)


def bending_moment_n_mm(wire: Wire) -> float | None:
    """The moment that bends a wire round any mandrel; None where its strength is not listed."""
    strength_mpa = wire.tensile_strength_mpa
    if strength_mpa is None:
        return None
    trials = () if wire.spool is None else wire.spool.trials
    known = learn(wire.material, wire.wire_diameter_mm, strength_mpa, trials).reckoned_with
    return springback.plastic_moment_n_mm(known.flow_stress_mpa, wire.wire_diameter_mm)


def wants_caution(wire: Wire, limits: HandWinding) -> bool:
    """Whether it is near the end of what is wound by hand."""
    return wire.wire_diameter_mm >= limits.caution_mm or (bending_moment_n_mm(wire) or 0.0) >= limits.caution_n_mm


def refused_by_size(wire: Wire, bench: Bench) -> Refusal | None:
    """The refusal of wire that is too thick, too strong or too thin to wind by hand."""
    size, limits = show_diameter(wire.wire_diameter_mm, bench.units), bench.hand_winding
    if wire.wire_diameter_mm >= limits.stop_mm:
        why = (
            f"wire of {size} is not wound by hand: the bench stops at {show_diameter(limits.stop_mm, bench.units)}, "
            "for bent wire of that size throws the crank with more than an arm holds"
        )
        return Refusal(HAND_LIMIT, why)
    moment_n_mm = bending_moment_n_mm(wire) or 0.0
    if moment_n_mm >= limits.stop_n_mm:
        takes, stop = (show_moment(each, bench.units) for each in (moment_n_mm, limits.stop_n_mm))
        why = (
            f"bending wire of {size} takes {takes} at the crank: the bench stops at {stop} (`stop_moment` of "
            "`hand_winding` in bench.yaml), for as much throws the crank back when it is let go"
        )
        return Refusal(HAND_LIMIT, why)
    if wire.wire_diameter_mm < THINNEST_WIRE_MM:
        why = f"wire of {size} is thinner than hand tools wind ({show_diameter(THINNEST_WIRE_MM, bench.units)})"
        return Refusal("wire-too-thin", why)
    return None


def show_moment(moment_n_mm: float, units: str) -> str:
    """A moment at the crank.

    >>> show_moment(401.3, "mm"), show_moment(401.3, "inch")
    ('0.40 N·m', '3.55 lbf·in')
    """
    return show_torque(moment_n_mm, units) if units == "inch" else f"{moment_n_mm / N_MM_PER_N_M:.2f} N·m"
