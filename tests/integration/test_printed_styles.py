"""Real styles from body to paper: every piece can be cut, and its marks agree with its mates."""

from functools import cache
from typing import Any

import pytest
import shapely

from house import ROOT
from notchbook.body import read_measures
from notchbook.finish import CutPiece, HouseTable, finish, muslin_table, production_table
from notchbook.output import PaperInfo
from notchbook.output.card_pdf import card_pdf
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.pattern import Pattern
from notchbook.recipe import Recipe, add_step, replay
from support.cut_shapes import polygon

BACK, FRONT = "skirt.back/waist", "skirt.front/waist"
VENT = ("vent", {"edge": "skirt.back/center_back", "hem_end": "skirt.back/hem_center"})
BAND = (
    "waistband",
    {
        "edges": [
            {"edge": BACK, "starts_at": "skirt.back/waist_center"},
            {"edge": FRONT, "starts_at": "skirt.front/waist_side"},
        ]
    },
)
FACING = (
    "waist_facing",
    {"edges": [{"edge": BACK, "center": f"{BACK}_center"}, {"edge": FRONT, "center": f"{FRONT}_center"}]},
)
STYLES: dict[str, list[tuple[str, dict[str, Any]]]] = {
    "block": [],
    "vent and waistband": [VENT, BAND],
    "vent and facing": [VENT, FACING],
}
BODIES = ("marta_v.csv", "ines_k.json", "form_a.json")
CASES = [(body, name) for body in BODIES for name in STYLES]
HOUSES = [production_table(), muslin_table(), production_table().with_changes({"supply": "fold"}, "on fold")]


@cache
def style(body: str, name: str) -> Pattern:
    measures = read_measures(ROOT / "examples" / "measures" / body)
    recipe = add_step(Recipe("Skirt", "S-1"), "skirt", {}, base=measures)
    for operation, parameters in STYLES[name]:
        recipe = add_step(recipe, operation, parameters, base=measures)
    run = replay(recipe, measures)
    assert run.suspended is None
    return run.pattern


def faults(piece: CutPiece) -> list[str]:
    """What would keep a piece from being cut."""
    cut, sew = polygon(piece.cut_line), polygon(piece.sew_line)
    found = []
    if not cut.is_valid:
        found.append(shapely.is_valid_reason(cut))
    elif not cut.buffer(1e-4).covers(sew):
        found.append("the sew line leaves the cut line")
    if not piece.label.is_clear:
        found.append("no room for the label")
    return [*found, *(finding.message for finding in piece.findings)]


@pytest.mark.parametrize("house", HOUSES, ids=lambda house: str(house.name))
@pytest.mark.parametrize(("body", "name"), CASES)
def test_every_piece_can_be_cut(body: str, name: str, house: HouseTable) -> None:
    assert {piece.title: faults(piece) for piece in finish(style(body, name), house) if faults(piece)} == {}


@pytest.mark.parametrize(("body", "name"), CASES)
def test_hip_notches_lie_on_the_hip_line_of_every_piece(body: str, name: str) -> None:
    drawn = style(body, name)
    lines = [line for piece in drawn.pieces.values() for line in piece.lines]
    # Where the hips of the two sides differ in depth, each side has a line of its own.
    levels = {side_of(line.name): line.path.start.y for line in lines if "hip_line" in line.name}
    for piece in finish(drawn, production_table()):
        hips = [notch for notch in piece.notches if "hip_notch" in notch.name]
        wanted = {"Front": 2, "Back": 1, "Right back": 1, "Left back": 1}.get(piece.title, 0)
        assert len(hips) == wanted
        for notch in hips:
            assert notch.sew_position.y == pytest.approx(levels[side_of(notch.name)], abs=0.01)


def test_each_hip_lies_as_high_over_the_floor_as_it_was_measured() -> None:
    measures = read_measures(ROOT / "examples" / "measures" / "ines_k.json")
    left, right = (
        measures.value("outside_leg", side) - measures.value("hip_depth", side) for side in ("left", "right")
    )
    lines = [line for piece in style("ines_k.json", "block").pieces.values() for line in piece.lines]
    levels = {side_of(line.name): line.path.start.y for line in lines if "hip_line" in line.name}
    assert left != right
    assert levels["left"] - levels["right"] == pytest.approx(left - right, abs=0.01)


def side_of(name: str) -> str:
    """The wearer's side that a name ends with; empty for one of both."""
    return name.partition("@")[2]


@pytest.mark.parametrize(("body", "name"), CASES)
def test_papers_are_made_and_count_the_pieces(body: str, name: str) -> None:
    pieces = finish(style(body, name), production_table())
    info = PaperInfo("S-1", "Skirt", size="Form A")
    _, card = card_pdf(pieces, info)
    assert card.piece_count == len(pieces)
    assert card.panels == sum(piece.panels for piece in pieces)
    data, tiling = tiled_pdf(pieces, info)
    assert {placement.piece.name for placement in tiling.sheet.placements} == {p.name for p in pieces}
    assert data.startswith(b"%PDF-")
