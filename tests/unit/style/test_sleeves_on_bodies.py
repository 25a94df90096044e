"""The steps of sleeves on a small, large, very full, a man's and a child's body: drawn, or refused."""

import pytest

from notchbook.pattern import pattern_to_data, walk_seam
from notchbook.recipe import Replay
from support.skirt_judge import Judge
from support.sleeve_styles import (
    BELL,
    BISHOP,
    CUFF,
    GUSSET,
    KIMONO,
    MUTTON,
    PLACKET,
    PUFF,
    RAGLAN,
    TWO_PIECE,
    Step,
    sleeve_style,
)
from upper_sheets import bodies

EASED = {"back_shoulder": "ease"}
SHOULDER = {"bust_dart": "shoulder"}
LONG: list[list[Step]] = [[BISHOP, PLACKET, CUFF], [MUTTON], [TWO_PIECE]]
REFUSED = {"raglan-parted", "kimono-gusset-close"}
"""What bodies refuse: a dart that contours a deep neck, an arm that hangs along the side."""


def shaped(name: str) -> list[Replay]:
    """All steps on one of the invented bodies of the sheets."""
    body = next(made for known, _, made in bodies() if known == name)
    found = [sleeve_style(steps, body) for steps in LONG]
    found += [
        sleeve_style([PUFF, CUFF], body, length="short"),
        sleeve_style([BELL], body, length="three_quarter"),
    ]
    found.append(sleeve_style([RAGLAN], body, EASED))
    return [*found, *(sleeve_style([step], body, SHOULDER, length="none") for step in (KIMONO, GUSSET))]


@pytest.mark.parametrize("name", ["small-80", "large-116", "very-full-bust", "man-100", "child-116"])
def test_every_body_has_its_sleeves_or_a_refusal_in_words(name: str) -> None:
    runs = shaped(name)
    stops = [run.suspended.error.code for run in runs if run.suspended is not None]
    assert set(stops) <= REFUSED
    for run in runs:
        if run.suspended is not None:
            continue
        judge = Judge(pattern_to_data(run.pattern))
        assert all(judge.polygon(piece).is_valid for piece in run.pattern.pieces)
        off = {
            seam: walk_seam(run.pattern, known).misfit
            for seam, known in run.pattern.seams.items()
            if abs(walk_seam(run.pattern, known).misfit) > 0.05
        }
        assert off == {}
