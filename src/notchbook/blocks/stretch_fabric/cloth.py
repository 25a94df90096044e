"""The cloth of a stretch garment as it was tested."""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from notchbook.blocks.stretch_fabric.classes import stretch_choices
from notchbook.errors import InputError
from notchbook.recipe import RecoveryText, StepParameters, StretchText
from notchbook.units import StretchTest, parse_recovery, parse_stretch

_CLOTH = Field(json_schema_extra={"group": "cloth"})

LEAST_RECOVERY = 0.90
"""Below it cloth bags after an hour of wear. Good cloth in a bench test: 0.90 to 0.95 (common practice)."""


EXAMPLE = "10 cm to 14 cm"
"""How a test of one's own is written, instead of one of the classes."""

WAYS = {"across": "across, round the body,", "along": "along, up and down the body,"}
"""The two ways of the cloth as they are asked for."""


@dataclass(frozen=True, slots=True)
class Cloth:
    """How far the cloth stretches ``across`` and ``along``, shares of the rest, and how much of that
    it gives back. None: not tested."""

    across: float
    along: float | None
    recovery: float | None


class ClothParameters(StepParameters):
    """What was tested of the cloth, as every stretch block asks for it."""

    across: Annotated[StretchText | None, Field(json_schema_extra={"group": "cloth", "asked": True})] = None
    """Stretch across the cloth, round the body: 10 cm to 14 cm, 4 in to 5 in, or 40 %. Asked for."""
    along: Annotated[StretchText | None, _CLOTH] = None
    """Stretch along the cloth, up and down the body. Empty: not tested, so that no length is reduced."""
    recovery: Annotated[RecoveryText | None, _CLOTH] = None
    """What comes back after letting go: 95 %. It may stand in the test: 10 cm to 14 cm back to 10.4 cm."""


def cloth_of(parameters: ClothParameters, *, needs_along: bool = False) -> Cloth:
    """The cloth that the parameters tell.

    InputError ``stretch-not-tested``, with the classes and the setting to give, where a stretch that is
    needed was not tested: a pattern reduced for another cloth spoils this one.
    """
    across = _tested(parameters.across, "across")
    along = _tested(parameters.along, "along") if needs_along or parameters.along is not None else None
    tests = [test for test in (across, along) if test is not None]
    recoveries = [test.recovery for test in tests if test.recovery is not None]
    if parameters.recovery is not None:
        recoveries = [parse_recovery(parameters.recovery)]
    return Cloth(
        across.stretch, None if along is None else along.stretch, min(recoveries) if recoveries else None
    )


def _tested(text: str | None, setting: str) -> StretchTest:
    if text is None:
        choices, said = stretch_choices()
        raise InputError(
            "stretch-not-tested",
            setting=setting,
            way=WAYS[setting],
            choices=choices,
            said=said,
            typed=EXAMPLE,
        )
    return parse_stretch(text)
