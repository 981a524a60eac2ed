"""The options of `wind` that ask what to do with a coil that came out otherwise than meant."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Annotated

import typer

from sourcing.cli.words import force_option, leg_angle_option, length_option, wrong_word
from sourcing.files.findings import quoted


@dataclass(frozen=True, slots=True)
class Measure:
    """An option, the name of what it measures, and what reads it."""

    option: str
    name: str
    read: Callable[[str, str], float]


MEASURES = (
    Measure("--came-out", "outside", length_option),
    Measure("--came-out-small-end", "outside_small", length_option),
    Measure("--came-out-pitch", "pitch", length_option),
    Measure("--came-out-angle", "angle", leg_angle_option),
    Measure("--came-out-tension", "tension", force_option),
    Measure("--pressed-to", "pressed_to", length_option),
    Measure("--pulled-to", "pulled_to", length_option),
)

CameOut = Annotated[
    str | None,
    typer.Option(
        "--came-out",
        metavar="DIAMETER",
        help="what to do with a coil that measures this outside, as wound (a cone: at its large end)",
    ),
]
CameOutSmallEnd = Annotated[
    str | None, typer.Option("--came-out-small-end", metavar="DIAMETER", help="the same at a cone's small end")
]
CameOutPitch = Annotated[
    str | None,
    typer.Option("--came-out-pitch", metavar="PITCH", help="what to do with one whose pitch came out so"),
]
CameOutAngle = Annotated[
    str | None,
    typer.Option("--came-out-angle", metavar="ANGLE", help="... with a torsion spring whose legs stand so, as wound"),
]
CameOutTension = Annotated[
    str | None,
    typer.Option(
        "--came-out-tension", metavar="FORCE", help="... with an extension spring that opens from this pull on"
    ),
]
PressedTo = Annotated[
    str | None,
    typer.Option("--pressed-to", metavar="LENGTH", help="what to do with one that is so long once pressed solid"),
]
PulledTo = Annotated[
    str | None,
    typer.Option(
        "--pulled-to", metavar="LENGTH", help="... so long inside its hooks at rest, once it was pulled to its longest"
    ),
]
Heated = Annotated[
    str | None,
    typer.Option("--heated", metavar="yes|no", help="whether the coil was measured after heat; no if not said"),
]
WoundOn = Annotated[
    str | None,
    typer.Option("--on", metavar="steel-rod|printed", help="what that coil was wound on; steel if not said"),
]

WOUND_ON = ("steel-rod", "printed")
"""The words by which a trial says it too."""

NO_COIL_ON = "it beside --came-out; a sheet for a printed mandrel is made with --solid OUT.stl"


@dataclass(frozen=True, slots=True)
class Asked:
    """What was measured, by name, the options it was given by, whether after heat, and what it was wound on."""

    measured: Mapping[str, float]
    options: tuple[str, ...]
    heated: bool
    wound_on: str | None


def asked(texts: Mapping[str, str | None], heated: str | None, wound_on: str | None) -> Asked:
    """What is asked of a coil, from the texts of the options. Raises WrongWords."""
    given = [(each, text) for each in MEASURES if (text := texts.get(each.option)) is not None]
    if heated not in (None, "yes", "no"):
        raise wrong_word("--heated", quoted(heated or ""), "yes or no")
    if heated is not None and not given:
        raise wrong_word("--heated", "no coil was measured", "it beside --came-out")
    if wound_on not in (None, *WOUND_ON):
        raise wrong_word("--on", quoted(wound_on or ""), " or ".join(WOUND_ON))
    if wound_on is not None and not given:
        raise wrong_word("--on", "no coil was measured", NO_COIL_ON)
    measured = {each.name: each.read(each.option, text) for each, text in given}
    return Asked(measured, tuple(each.option for each, _ in given), heated == "yes", wound_on)
