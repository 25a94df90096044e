"""Pleats and gathers on the sheet: which way they are laid, where they end, and what they come to."""

import re
from math import hypot
from pathlib import Path
from typing import Any

import pytest

from notchbook.pattern import Pattern
from notchbook.recipe.registry import all_definitions
from notchbook.workroom.answers.choices import name_choices
from notchbook.workroom.answers.piece import SheetPiece, sheet_piece
from notchbook.workroom.reader import Reader
from support.yoke_skirt import FRONT, run, skirt_recipe, with_steps

ARRANGED = Path(__file__).parents[3] / "frontend" / "src" / "steps" / "arranged.ts"

WAIST = {
    "edge": f"{FRONT}/waist",
    "from_point": f"{FRONT}/waist_center",
    "across": f"{FRONT}/hem",
    "across_point": f"{FRONT}/hem_center",
}


def styled(operation: str, **parameters: Any) -> Pattern:
    """A skirt without front darts with one step more."""
    recipe = with_steps(skirt_recipe(front_darts=0), (operation, "more", {**WAIST, **parameters}))
    return run(recipe).pattern


def front(pattern: Pattern) -> SheetPiece:
    return sheet_piece(pattern, pattern.pieces[FRONT], Reader("cm"))


def test_a_plain_front_takes_nothing_up() -> None:
    shown = front(run(skirt_recipe()).pattern)
    assert (shown.folds, shown.drawn_in) == ((), ())


@pytest.mark.parametrize(("laid", "toward_center"), [("toward", True), ("away", False)])
def test_the_arrow_of_a_pleat_is_as_long_as_its_underlay_and_points_as_it_is_laid(
    laid: str, toward_center: bool
) -> None:
    (fold,) = front(styled("pleats", depth="3 cm", first_distance="6 cm", laid=laid, stitched="8 cm")).folds
    length = hypot(fold.end.x - fold.start.x, fold.end.y - fold.start.y)
    assert length == pytest.approx(60.0, abs=0.5), "two depths of cloth lie in the fold"
    assert (fold.end.x > fold.start.x) is toward_center, "the center front lies toward +x"
    assert len(fold.stitches) == 2


def test_a_gathered_waist_says_what_it_comes_to_and_where_it_ends() -> None:
    pattern = styled("gather_edge", from_distance="3 cm", fullness="standard")
    (stretch,) = front(pattern).drawn_in
    assert stretch.kind == "gather"
    open_length, drawn = map(float, re.findall(r"([\d.]+) cm", stretch.said))
    assert open_length == pytest.approx(2.0 * drawn, abs=0.16), "each is rounded to 0.1 cm"
    for place, outward in stretch.limits:
        assert hypot(outward.x, outward.y) == pytest.approx(1.0, abs=1e-3)
        assert outward.y > 0.9, f"the waist looks up at {place}"


def test_the_seams_can_be_chosen() -> None:
    pattern = run(skirt_recipe()).pattern
    assert {seam.name for seam in name_choices(pattern, Reader("cm")).seams} == set(pattern.seams)


def test_the_page_arranges_no_field_that_is_not_there() -> None:
    """What the page calls a field is written in its own table, which must follow the parameters."""
    text = ARRANGED.read_text(encoding="utf-8")
    common, own = text.split("const COMMON")[1].split("const OWN")
    fields = {one.operation: _fields(one.parameters.model_json_schema()) for one in all_definitions()}
    everywhere = {name for names in fields.values() for name in names}
    assert set(re.findall(r"^  (\w+): \{", common, re.M)) - everywhere == set()
    for operation, table in re.findall(r"^  (\w+): (\{.*?\}|\{\n.*?^  \}),$", own, re.M | re.S):
        listed = set(re.findall(r"(?:^    |^\{ )(\w+): \{", table, re.M))
        assert listed, operation
        assert listed - fields[operation] == set(), operation


def _fields(schema: dict[str, Any]) -> set[str]:
    parts = [schema, *schema.get("$defs", {}).values()]
    return {name for part in parts for name in part.get("properties", {})}
