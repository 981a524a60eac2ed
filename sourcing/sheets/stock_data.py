"""The answers of `stock` as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import asdict
from pathlib import PurePath

from sourcing.files.findings import Finding, Place
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.quantities import Money
from sourcing.sheets.data import Document, mistakes_document
from sourcing.springs.describe import describe
from sourcing.springs.model import ExtensionSpring, Spring, TorsionSpring
from sourcing.stock.adding import Added
from sourcing.stock.counting import Count
from sourcing.stock.model import Spool, StockSpring


def stock_document(springs: Iterable[StockSpring], spools: Iterable[Spool]) -> Document:
    """Springs and spools, each with the keys of its record and its figures."""
    return {"springs": [spring_document(stock) for stock in springs], "spools": [spool_document(one) for one in spools]}


def spring_document(stock: StockSpring) -> Document:
    """A spring: all that `describe` says of it, and its shelf data."""
    spring = stock.spring
    figures = asdict(describe(spring))
    del figures["at"]
    return {
        "id": stock.id,
        **figures,
        **_of_kind(spring),
        "hand": spring.hand,
        "elastic_modulus_mpa": spring.elastic_modulus_mpa,
        f"stated_{'rate_n_mm_per_deg' if spring.kind == 'torsion' else 'rate_n_per_mm'}": stock.stated_rate,
        "grade": stock.grade,
        "on_hand": stock.on_hand,
        "least": stock.least,
        "place": stock.shelf,
        "seller": stock.seller,
        "price": _money(stock.price),
        "pack": stock.pack,
        "lead_days": stock.lead_days,
        "note": stock.note,
        **_where(stock.place),
    }


def _of_kind(spring: Spring) -> Document:
    """What the record of a spring of this kind has beside what `describe` tells."""
    if isinstance(spring, TorsionSpring):
        return {}
    if isinstance(spring, ExtensionSpring):
        return {"ends": None, "shear_modulus_mpa": spring.shear_modulus_mpa}
    return {"ends": spring.ends, "shear_modulus_mpa": spring.shear_modulus_mpa}


def spool_document(spool: Spool) -> Document:
    """A spool with its trials."""
    return {
        "id": spool.id,
        "material": spool.material.name,
        "wire_diameter_mm": spool.wire_diameter_mm,
        "tensile_strength_mpa": tensile_strength_mpa(spool.material, spool.wire_diameter_mm),
        "length_left_mm": spool.length_left_mm,
        "price_per_metre": _money(spool.price_per_metre),
        "place": spool.shelf,
        "trials": [asdict(trial) for trial in spool.trials],
        "note": spool.note,
        **_where(spool.place),
    }


def count_document(count: Count) -> Document:
    """What there is after something was taken or put back: springs under on_hand, wire under length_left_mm."""
    return {
        "id": count.item.id,
        **_left(count.item, count.left),
        "file": count.item.place.file,
        "line": count.line,
        "changed": list(count.changed),
    }


def added_document(added: Added) -> Document:
    """What was added, and where."""
    left = added.item.length_left_mm if isinstance(added.item, Spool) else added.item.on_hand
    return {
        "id": added.item.id,
        **_left(added.item, left),
        "file": added.file,
        "line": added.line,
        "changed": list(added.changed),
    }


def check_document(mistakes: Sequence[Finding], doubts: Sequence[Finding]) -> Document:
    """Every mistake and every doubt."""
    return {**mistakes_document(mistakes), "doubts": mistakes_document(doubts)["mistakes"]}


def _left(item: StockSpring | Spool, left: float | None) -> Document:
    if isinstance(item, Spool):
        return {"on_hand": None, "length_left_mm": left}
    return {"on_hand": None if left is None else round(left)}


def _money(money: Money | None) -> Document | None:
    return None if money is None else asdict(money)


def _where(place: Place) -> Document:
    return {"file": None if place.file is None else str(PurePath(place.file)), "line": place.line}
