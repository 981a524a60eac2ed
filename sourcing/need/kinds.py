"""The kinds of springs, and the words of a spring that needs and catalogues share.

A kind that this version works out has its record beside the others (records.py here and in stock/).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import Field

from sourcing import materials
from sourcing.files.fields import one_of, read_by, read_within, words_of
from sourcing.files.findings import quoted
from sourcing.files.nearest import nearest
from sourcing.materials.model import NO_MATERIALS, Material, OwnMaterials
from sourcing.need.other_springs import refused_kind
from sourcing.quantities import QuantityError, angle_deg, at_least_zero
from sourcing.springs.end_pieces import MOST_BENT_DEG
from sourcing.springs.model import Ends, EndShape, Hand, Hooks, LegShape

KINDS = ("compression", "conical", "extension", "torsion")

_MEANT = {
    **dict.fromkeys(("cone", "coned", "cone-shaped", "taper", "tapered"), "conical"),
    **dict.fromkeys(("cylinder", "cylindrical", "push", "pressure"), "compression"),
    "pull": "extension",
}
"""Words that mean a kind and are not like it; a cylindrical spring would else be taken for a conical one."""


OWN_KEYS: Mapping[str, tuple[str, ...]] = {
    "compression": ("ends", "end_1", "end_2"),
    "extension": ("hooks", "initial_tension", "pull_to_fit", "torn_hooks"),
    "torsion": ("leg_1", "leg_2", "free_angle", "bodies", "body_length"),
}
"""The keys of a spring and of a need that only this kind has; a cone has those of a compression spring."""


_OF_END = ("shape", "length", "angle")


def keys_of_others(kind: str) -> Mapping[str, str]:
    """The keys that another kind has, and which: a message says whose they are."""
    return {
        key: f"{'an' if other[0] in 'aeiou' else 'a'} {other} spring"
        for other, keys in OWN_KEYS.items()
        if other != kind
        for key in keys
    }


def kind_meant(text: object) -> str | None:
    """The kind that a text names, or comes nearest to; None for a text like none of them, a spring of another build, or
    no text.
    """
    if not isinstance(text, str) or refused_kind(text):
        return None
    return text if text in KINDS else next(iter(_kinds_like(text)), None)


def _kinds_like(text: str) -> tuple[str, ...]:
    """The kinds that a wrong word may have meant, nearest first."""
    meant = _MEANT.get(text.casefold().removesuffix("spring").strip(" -_"))
    return nearest(text, KINDS) if meant is None else (meant,)


def settled(own: OwnMaterials, currency: str = "EUR") -> Mapping[str, object]:
    """What the fields of a record look at beside their own text: the keeper's materials, and the currency."""
    return {"currency": currency, "materials": own}


def length_alone(value: object) -> object:
    """A leg by its length alone, `leg_1: 20 mm`, as its keys would have it."""
    return {"length": value} if isinstance(value, str) else value


def end_alone(value: object) -> object:
    """An end that hooks in as a text, `end_1: tang-in, 4 mm, 90 deg`, as its keys would have it."""
    if not isinstance(value, str) or value.count(",") >= len(_OF_END):
        return value
    return dict(zip(_OF_END, (part.strip() for part in value.split(",")), strict=False))


def _kind(text: str) -> str:
    if refused := refused_kind(text):
        raise QuantityError(*refused)
    return one_of({kind: kind for kind in KINDS}, "kind of spring", _kinds_like)(text)


def _material(text: str, settled: Mapping[str, Any]) -> Material | None:
    own: OwnMaterials = settled.get("materials", NO_MATERIALS)
    name = materials.folded(text)
    if name in own:
        return own[name]
    material = materials.find(name)
    if material is None:
        found = f"{quoted(text)} is no material that is known" if text.strip() else "nothing stands here"
        owned = [each.name for each in own.values() if each is not None]
        known = words_of((*materials.words(), *owned, "a standard's own name, as in EN 10270-1 DH"))
        raise QuantityError(found, known, nearest(text, (*materials.names(), *owned)))
    return material


def _bend_deg(text: str) -> float:
    angle = at_least_zero(angle_deg(text), text, "an angle")
    if angle > MOST_BENT_DEG:
        raise QuantityError(f"{text} is sharper than is bent", f"a bend out of the coil of 0 to {MOST_BENT_DEG:g} deg")
    return angle


KindField = Annotated[str | None, read_by(_kind), Field(description=words_of(KINDS))]
EndsField = Annotated[
    Ends | None, read_by(one_of({ends.value: ends for ends in Ends}, "kind of ends")), Field(description=words_of(Ends))
]
HooksField = Annotated[
    Hooks | None,
    read_by(one_of({hooks.value: hooks for hooks in Hooks}, "kind of hooks")),
    Field(description=words_of(Hooks)),
]
HandField = Annotated[
    Hand | None, read_by(one_of({hand.value: hand for hand in Hand}, "hand")), Field(description=words_of(Hand))
]
MaterialField = Annotated[Material | None, read_within(_material), Field(description="a material, as in music-wire")]
LegShapeField = Annotated[
    LegShape | None,
    read_by(one_of({shape.value: shape for shape in LegShape}, "shape of a leg")),
    Field(description=words_of(LegShape)),
]
BodiesField = Annotated[
    int | None,
    read_by(one_of({"1": 1, "2": 2}, "number of bodies")),
    Field(description="1, or 2 for a double torsion spring"),
]
EndShapeField = Annotated[
    EndShape | None,
    read_by(one_of({shape.value: shape for shape in EndShape}, "shape of an end")),
    Field(description=words_of(EndShape)),
]
BendField = Annotated[float | None, read_by(_bend_deg), Field(description="an angle, as in 90 deg")]
