"""What a record of any kind of spring has: an id, a kind, and its shelf data."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from sourcing.files.fields import Count, CountFromOne, Days, Price, Rate, Stress, Text, one_of, read_by
from sourcing.files.records import Record
from sourcing.need.kinds import HandField, KindField

Grade = Annotated[
    int | None, read_by(one_of({"1": 1, "2": 2, "3": 3}, "grade of tolerance")), Field(description="1, 2 or 3")
]


class ShelfRecord(Record):
    """The keys that a spring has whatever its kind."""

    called = "a spring"

    id: Text
    kind: KindField
    rate: Rate = None
    grade: Grade = None
    shear_modulus: Stress = None
    elastic_modulus: Stress = None
    tensile_strength: Stress = None
    hand: HandField = None
    on_hand: Count = None
    least: Count = None
    place: Text = None
    seller: Text = None
    price: Price = None
    pack: CountFromOne = None
    lead_days: Days = None
    note: Text = None
