"""A belly that the block does not hold below the waist is said; where it can not close, the papers stop."""

from typing import Any

import pytest

from notchbook.app.drafting import draft
from notchbook.body import MeasureSet
from notchbook.pattern import Severity
from support.bodice_bodies import MAN


def said(block: str, belly: float | None, **parameters: Any) -> list[Severity]:
    """How the belly of a man with a hip of 100 is spoken of."""
    measures = MAN if belly is None else MAN | {"belly_girth": belly}
    run = draft(block, MeasureSet.from_mm("man", measures, population="men"), parameters)
    return [note.severity for note in run.notes if note.code == "belly-not-held"]


@pytest.mark.parametrize(
    ("block", "parameters"), [("torso", {}), ("dress", {}), ("bodice", {"length": "hip"})]
)
def test_a_belly_larger_than_the_block_stops(block: str, parameters: dict[str, Any]) -> None:
    assert said(block, 1120.0, **parameters) == [Severity.STOP]
    assert said(block, 980.0, **parameters) == []
    assert said(block, None, **parameters) == []


def test_a_belly_that_takes_the_ease_of_the_hip_is_looked_at() -> None:
    assert said("torso", 1030.0) == [Severity.LOOK]
    assert said("torso", 1030.0, hip_ease="12 cm") == []


def test_a_bodice_to_the_waist_has_nothing_to_say_of_a_belly() -> None:
    assert said("bodice", 1120.0) == []
