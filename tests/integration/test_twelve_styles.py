"""Every style of the rack, from block to paper, on three bodies. Styles and bodies are invented.

How many of each piece are cut was counted by hand from a sketch of each style (``style_counts``), not from
the program; there too stand the codes of what the checks may say because it is meant.
"""

import tomllib
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from lower_sheets import lower_bodies
from notchbook.app.examining import examine
from notchbook.app.papers import CutReady, cut_ready, job_of
from notchbook.app.rack.styles import rack
from notchbook.body import MeasureSet
from notchbook.body.charts import shipped_chart
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Severity, walk_seam
from notchbook.recipe import Replay, change_step, recipe_from_json, recipe_to_json, remove_step, replay

RECIPES = {style.stem: style.recipe for style in rack()}
COUNTS = Path(__file__).parent / "style_counts"
STYLES = sorted(RECIPES)

BASE = "medium-92"
OTHERS = ("small-80", "plus-128")


@cache
def women() -> dict[str, MeasureSet]:
    """The invented women by their names."""
    return dict(lower_bodies())


@cache
def counted(style: str) -> dict[str, Any]:
    """The table of the style, counted by hand."""
    return tomllib.loads((COUNTS / f"{style}.toml").read_text(encoding="utf-8"))


@cache
def made(style: str, name: str) -> Replay:
    """The style run on a body; it may not stop."""
    done = replay(RECIPES[style], women()[name])
    assert done.suspended is None, f"{done.suspended.step}: {done.suspended.error}"
    return done


@cache
def papers(style: str) -> CutReady:
    """The cut pieces of the style on the base body, with what all checks say of it."""
    return cut_ready(job_of(made(style, BASE), "2026-01-15"))


@pytest.mark.parametrize("name", OTHERS)
@pytest.mark.parametrize("style", STYLES)
def test_a_style_of_the_rack_runs_and_nothing_would_spoil_cloth(style: str, name: str) -> None:
    found = examine(made(style, name), cut=False)
    assert [f"{f.code} {f.where}" for f in found.findings if f.severity is Severity.STOP] == []
    assert found.broken == ()


@pytest.mark.parametrize("style", STYLES)
def test_on_the_base_body_only_what_is_meant_is_told(style: str) -> None:
    found = papers(style).report
    assert found.broken == ()
    told = {f.code for f in found.findings if f.severity is not Severity.NOTE}
    assert told == set(counted(style).get("meant", ()))


@pytest.mark.parametrize("style", STYLES)
def test_in_every_size_of_the_chart_only_what_is_meant_is_told(style: str) -> None:
    """The chart of the computed women's sizes, 76 to 128: nobody looks a style over anew for every size."""
    told: dict[str, set[str]] = {}
    for size in shipped_chart("women").sizes:
        done = replay(RECIPES[style], size)
        assert done.suspended is None, f"{size.name}: {done.suspended.step}: {done.suspended.error}"
        found = examine(done, cut=True)
        assert found.broken == ()
        told[size.name] = {f"{f.code} {f.where}" for f in found.findings if f.severity is not Severity.NOTE}
    assert {name: lines for name, lines in told.items() if lines} == {}


@pytest.mark.parametrize("style", STYLES)
def test_every_seam_of_a_style_walks_and_can_be_sewn(style: str) -> None:
    # 1/16 in is what the trade keeps between notched seams (trade articles and sewing magazines); half of it
    # is asked here.
    pattern = made(style, BASE).pattern
    misfits = {name: walk_seam(pattern, seam).misfit for name, seam in pattern.seams.items()}
    assert {name: off for name, off in misfits.items() if abs(off) > 25.4 / 32.0} == {}
    order = sewing_order(pattern)
    assert (order.gaps, order.waiting) == ((), ())


@pytest.mark.parametrize("style", STYLES)
def test_the_cutter_gets_what_was_counted_by_hand(style: str) -> None:
    cut: dict[str, Counter[str]] = {}
    for piece in papers(style).pieces:
        for one in piece.quantities:
            cut.setdefault(one.material, Counter())[piece.title] += one.panels
    assert cut == counted(style)["cut"]


@pytest.mark.parametrize("style", STYLES)
def test_the_recipe_of_a_style_is_written_as_it_was_read(style: str) -> None:
    recipe = made(style, BASE).recipe
    assert recipe_from_json(recipe_to_json(recipe)) == recipe


@pytest.mark.parametrize(("length", "told"), [("20 cm", True), ("back_waist_length - 10 mm", False)])
def test_a_shell_closed_at_the_waist_is_told_to_be_too_narrow_for_the_bust(length: str, told: bool) -> None:
    """79 cm of waist do not pass over a bust of 92; a zip that parts lets it be put on."""
    recipe = RECIPES["darted_shell"]
    zipped = next(step.id for step in recipe.steps if step.operation == "zip_opening")
    run = replay(change_step(recipe, zipped, {"length": length}, base=women()[BASE]), women()[BASE])
    assert ("opening-under-bust" in {one.code for one in examine(run, cut=False).findings}) is told


def test_the_front_facing_of_the_leather_skirt_is_parted_for_the_largest_sizes() -> None:
    """Whole it is wider there than the panel of 60 cm that a pigskin gives (a figure from memory)."""
    recipe = RECIPES["leather_mini_skirt"]
    whole = remove_step(recipe, next(step.id for step in recipe.steps if step.operation == "center_seam"))
    size = shipped_chart("women").sizes[-1]
    told = [{finding.code for finding in examine(replay(one, size)).findings} for one in (recipe, whole)]
    assert ["leather-panel-wide" in codes for codes in told] == [False, True]
