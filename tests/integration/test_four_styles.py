"""Four whole styles, from slopers to cut-ready pieces, on six bodies. Styles and bodies are invented.

What is counted and looked for here was counted by hand from a sketch of each style, not from the program.
"""

from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from lower_sheets import lower_bodies
from notchbook.app.examining import examine
from notchbook.app.papers import cut_ready, job_of
from notchbook.body import MeasureSet
from notchbook.checks import Report
from notchbook.pattern import Severity, sewn_length, walk_seam
from notchbook.recipe import Replay, recipe_from_json, recipe_to_json, replay
from support.bodice_bodies import FULL_BUST, body
from upper_sheets import bodies

FOLDER = Path(__file__).parent / "four_styles"

BASE = "medium-92"
BODIES = ("small-80", BASE, "large-116", "very-full-bust", "plus-128", "full-bust-112")

PIECES = {
    "darted_shell": {
        "Back": 1,
        "Front": 1,
        "Back neck facing": 1,
        "Front neck facing": 1,
        "Back armhole facing": 2,
        "Front armhole facing": 2,
    },
    "princess_dress": {
        "Bodice center front": 1,
        "Bodice side front": 2,
        "Bodice center back": 1,
        "Bodice side back": 2,
        "Skirt front": 1,
        "Skirt back": 1,
        "Bodice front all-in-one facing": 1,
        "Bodice back all-in-one facing": 1,
    },
    "yoke_skirt_with_pleats": {
        "Front yoke": 1,
        "Front": 1,
        "Back yoke": 2,
        "Back": 2,
        "Front yoke waist facing": 1,
        "Back yoke waist facing": 2,
    },
    "bias_slip": {"Front": 1, "Back": 1},
}
"""How many of each piece are cut in self for one garment; a piece on the fold is one."""

MADE_FAIR = (
    "edge-kinked",
    "edge-wavers",
    "edge-bumpy",
    "outline-sliver",
    "junction-dip",
    "seam-allowances-differ",
)


@cache
def measures() -> dict[str, MeasureSet]:
    """The invented women by their names."""
    upper = {name: made for name, _, made in bodies()}
    known = upper | {"plus-128": dict(lower_bodies())["plus-128"]}
    return {**known, "full-bust-112": body(FULL_BUST, knee_depth=590.0)}


@cache
def made(style: str, name: str) -> Replay:
    """The style run on a body; it may not stop."""
    recipe = recipe_from_json((FOLDER / f"{style}.json").read_text(encoding="utf-8"))
    done = replay(recipe, measures()[name])
    assert done.suspended is None, f"{done.suspended.step}: {done.suspended.error}"
    return done


@cache
def report(style: str, name: str) -> Report:
    """What all checks say of the style on a body."""
    return examine(made(style, name))


@pytest.mark.parametrize("name", BODIES)
@pytest.mark.parametrize("style", PIECES)
def test_a_style_runs_on_every_body_and_nothing_would_spoil_cloth(style: str, name: str) -> None:
    found = report(style, name)
    assert [f"{f.code} {f.where}" for f in found.findings if f.severity is Severity.STOP] == []
    assert found.broken == ()


@pytest.mark.parametrize("name", ("small-80", BASE, "large-116"))
@pytest.mark.parametrize("style", PIECES)
def test_lines_are_fair_and_the_two_sides_of_a_seam_have_one_allowance(style: str, name: str) -> None:
    found = [f"{f.code} {f.where}" for f in report(style, name).findings if f.code in MADE_FAIR]
    assert found == []


@pytest.mark.parametrize("name", (BASE, "plus-128"))
@pytest.mark.parametrize("style", PIECES)
def test_the_cutter_gets_each_piece_as_often_as_the_garment_has_it(style: str, name: str) -> None:
    ready = cut_ready(job_of(made(style, name), "2026-01-15"))
    cut: Counter[str] = Counter()
    for piece in ready.pieces:
        cut[piece.title] += sum(one.panels for one in piece.quantities if one.material == "self")
    assert cut == PIECES[style]


@pytest.mark.parametrize("style", PIECES)
def test_every_seam_of_the_base_walks(style: str) -> None:
    # 1/16 in is what the trade keeps between notched seams (trade articles and sewing magazines); half of it
    # is asked here.
    pattern = made(style, BASE).pattern
    misfits = {name: walk_seam(pattern, seam).misfit for name, seam in pattern.seams.items()}
    assert {name: off for name, off in misfits.items() if abs(off) > 25.4 / 32.0} == {}


@pytest.mark.parametrize("style", PIECES)
def test_a_recipe_is_kept_as_it_was_written(style: str) -> None:
    text = (FOLDER / f"{style}.json").read_text(encoding="utf-8")
    assert recipe_to_json(recipe_from_json(text)) == text


def test_the_pleats_take_two_depths_each_and_the_yoke_meets_them_closed() -> None:
    # Closed form of the trade: a fold of depth d takes 2 d; on an edge that slants a little more.
    pattern = made("yoke_skirt_with_pleats", BASE).pattern
    below = pattern.pieces["yoke.front_below"]
    folds = [intake for intake in below.intakes if intake.kind == "pleat"]
    taken = [below.edge(fold.first_leg).length + below.edge(fold.second_leg).length for fold in folds]
    assert taken == pytest.approx([60.0, 60.0, 60.0], abs=2.0)
    yoke = sewn_length(pattern, "yoke.front_above/style_line")
    assert sewn_length(pattern, "yoke.front_below/style_line") == pytest.approx(yoke, abs=0.1)


def test_the_slip_lies_on_the_true_bias() -> None:
    pattern = made("bias_slip", BASE).pattern
    assert {piece.cut for piece in pattern.pieces.values()} == {"single"}
    for piece in pattern.pieces.values():
        assert abs((piece.grain.degrees - 90.0 + 180.0) % 180.0) == pytest.approx(45.0)
