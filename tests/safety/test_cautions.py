"""The cautions that lead a winding sheet, and those that go with what the need touches."""

from __future__ import annotations

import pytest

from sourcing.safety import fitting_cautions, winding_cautions


def told(cautions: tuple[str, ...], *words: str) -> bool:
    """Whether one caution says all of the words."""
    return any(all(word in caution.lower() for word in words) for caution in cautions)


@pytest.mark.parametrize(
    "words",
    [
        ("eye protection", "stores energy", "whips"),
        ("both ends",),
        ("free end", "no one"),
        ("gloves", "cut wire", "never near a turning drill or lathe"),
        ("ease the crank", "the coil drives it"),
        ("cut ends fly",),
    ],
)
@pytest.mark.parametrize("heated", [True, False])
@pytest.mark.parametrize("turning", [True, False])
def test_every_winding_sheet_has_the_cautions_of_wire_under_load(
    words: tuple[str, ...], heated: bool, turning: bool
) -> None:
    assert told(winding_cautions(heated, turning), *words)


def test_eye_protection_comes_first() -> None:
    assert "eye protection" in winding_cautions(heated=True, turning=True)[0]


@pytest.mark.parametrize(
    "words", [("oily wire",), ("no food",), ("printed in plastic",), ("ventilation",), ("hot metal",)]
)
def test_heating_has_cautions_of_its_own(words: tuple[str, ...]) -> None:
    assert told(winding_cautions(heated=True, turning=False), *words)
    assert not told(winding_cautions(heated=False, turning=False), *words)


def test_a_turning_mandrel_has_cautions_of_its_own() -> None:
    assert told(winding_cautions(heated=False, turning=True), "loose sleeves")
    assert not told(winding_cautions(heated=False, turning=False), "loose sleeves")


@pytest.mark.parametrize(
    ("texts", "surroundings", "words"),
    [
        (["coffee-grinder", "spring under the burr"], [], ("food contact",)),
        (["tube-clip"], ["food"], ("food contact",)),
        (["toaster", "carriage spring"], [], ("heat", "loses force")),
        (["table-lamp", "spring in the switch"], [], ("live electrical", "licensed")),
        (["torch", "battery contact"], [], ("carries current",)),
        (["torch-tail", "spring in the tail cap of a torch, which presses on the cell"], [], ("carries current",)),
        (["contact", "beryllium-copper"], [], ("no grinding, no sanding, no filing",)),
        (["clip", "wire of BeCu"], [], ("no grinding, no sanding, no filing",)),
        (["radio-clip", "cadmium-plated spring"], [], ("no heat, no grinding",)),
        (["latch", "old spring with a yellowish sheen"], [], ("cadmium", "no heat")),
    ],
)
def test_a_caution_is_called_by_words_or_surroundings(
    texts: list[str], surroundings: list[str], words: tuple[str, ...]
) -> None:
    assert told(fitting_cautions(texts, surroundings), *words)
    assert not told(fitting_cautions(["drawer", "return spring of a ledger clip"], ["indoor-dry"]), *words)


def test_a_kitchen_is_a_room_and_only_what_works_there_on_food_calls_for_stainless_wire() -> None:
    """A caution against the very wire that the sheet takes is read over the next time."""
    assert not told(fitting_cautions(["latch", "catch of a kitchen cupboard"], []), "food contact")
    assert told(fitting_cautions(["lever", "return spring of a kitchen gadget"], []), "food contact")
    assert told(fitting_cautions(["drawer", "catch of a bread bin in the kitchen"], []), "food contact")


def test_every_need_is_told_to_let_the_spring_down_captive_and_defers_to_local_codes() -> None:
    cautions = fitting_cautions([], [])
    assert told(cautions, "captive", "eye protection")
    assert cautions[-1].startswith("Local codes")
    assert winding_cautions(heated=False, turning=False)[-1].startswith("Local codes")
