"""Pleats: what they take, how the edge lies when they are closed, what is sewn to it."""

from typing import Any

import numpy as np
import pytest
from shapely.geometry import LineString
from shapely.geometry import Point as ShapelyPoint

from notchbook.geometry import Path
from notchbook.pattern import closed_path, pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Replay
from notchbook.style.fullness.folds import FoldsAt, folded
from notchbook.style.fullness.slash_lines import Ends, slashes_along_grain
from support.fullness import cloth, pleats_step
from support.skirt_judge import Judge
from support.sleeve_bodies import spoken_of
from support.yoke_skirt import BACK, FRONT, WAISTBAND, run, skirt_recipe, stopped, with_steps

PLAIN = run(skirt_recipe(front_darts=0))
WAIST = f"{FRONT}/waist"


def pleated(**changes: Any) -> Replay:
    return run(with_steps(skirt_recipe(front_darts=0), pleats_step(**changes)))


def open_length(done: Replay) -> float:
    """The waist of the front with its folds open flat: straight over every fold."""
    piece = done.pattern.pieces[FRONT]
    total = sum(done.pattern.edges[name].length for name in done.pattern.groups[WAIST].members)
    for intake in piece.intakes:
        mouth, end = piece.edge(intake.first_leg).path.start, piece.edge(intake.second_leg).path.end
        total += mouth.distance_to(end)
    return total


def greatest_gap(first: Path, second: Path) -> float:
    shares = np.linspace(0.0, 1.0, 101)
    return max(
        first.point_at(first.length * share).distance_to(second.point_at(second.length * share))
        for share in shares
    )


def test_ten_pleats_of_3_cm_take_60_cm_of_60() -> None:
    """A worked example of the trade (common practice): 60 cm, ten pleats 3 cm deep, 120 cm of cloth."""
    pattern = cloth(600.0, 500.0)
    name = "cloth.panel"
    ends = Ends(f"{name}/waist", f"{name}/before_left", f"{name}/hem", f"{name}/before_hem")
    slashes = slashes_along_grain(pattern, ends, [30.0 + 60.0 * index for index in range(10)])
    folds = [FoldsAt((f"{name}/pleat_{n}",), (False,), f"after_{n}") for n in range(1, 11)]
    piece = folded(pattern, ends.edge, slashes, folds, (30.0, 30.0), 0.0).piece
    assert piece.edge(f"{name}/hem").length == pytest.approx(1200.0, abs=1e-6)
    assert piece.bounds.max_x - piece.bounds.min_x == pytest.approx(1200.0, abs=1e-6)
    assert len(piece.intakes) == 10


@pytest.mark.parametrize(
    ("changes", "taken"),
    [
        ({"number": 3, "spacing": "5 cm"}, 180.0),
        ({"kind": "box", "first_distance": "8 cm"}, 120.0),
        ({"kind": "inverted", "first_distance": "8 cm", "depth": "4 cm"}, 160.0),
        ({"number": 2, "across_depth": "0 mm", "run": "share"}, 120.0),
    ],
)
def test_a_fold_takes_twice_its_depth_and_the_edge_stays_as_long_when_laid(
    changes: dict[str, Any], taken: float
) -> None:
    done = pleated(**changes)
    finished = sewn_length(PLAIN.pattern, WAIST)
    assert sewn_length(done.pattern, WAIST) == pytest.approx(finished, abs=1e-6)
    assert open_length(done) == pytest.approx(finished + taken, abs=1e-6)
    assert Judge(pattern_to_data(done.pattern)).polygon(FRONT).is_valid


@pytest.mark.parametrize(
    "changes",
    [
        {"number": 3, "spacing": "5 cm"},
        {"number": 2, "laid": "toward", "depth": "2 cm"},
        {"kind": "box", "first_distance": "9 cm", "across_depth": "1 cm"},
        {"kind": "inverted", "first_distance": "9 cm", "depth": "5 cm"},
    ],
)
def test_with_the_pleats_closed_the_waist_is_the_line_that_it_was(changes: dict[str, Any]) -> None:
    before, after = (closed_path(done.pattern, WAIST) for done in (PLAIN, pleated(**changes)))
    assert greatest_gap(before, after) < 1e-6


@pytest.mark.parametrize("laid", ["toward", "away"])
def test_both_layers_in_a_fold_lie_even_with_the_waist(laid: str) -> None:
    """Folded here by reflection alone, at the fold line and at the inner fold, as paper is."""
    done = pleated(number=1, first_distance="14 cm", laid=laid)
    piece = done.pattern.pieces[FRONT]
    (intake,) = piece.intakes
    lines = [piece.line(name) for name in (intake.first_line, intake.second_line)]
    fold = next(line.path for line in lines if line.kind == "fold_line")
    on_first = piece.line(intake.first_line).kind == "fold_line"
    legs = [piece.edge(name).path for name in (intake.first_leg, intake.second_leg)]
    inner = legs[0] if on_first else legs[1]
    beside = "near" if laid == "away" else "after_1"
    waist = done.pattern.edges[f"{WAIST}/{beside}"].path
    along = np.array([fold.end.x - fold.start.x, fold.end.y - fold.start.y])
    along /= np.linalg.norm(along)
    for share in np.linspace(0.0, 1.0, 11):
        place = inner.point_at(inner.length * share)
        out = np.array([place.x - fold.start.x, place.y - fold.start.y])
        back = 2.0 * (out @ along) * along - out
        landed = type(place)(fold.start.x + back[0], fold.start.y + back[1])
        assert waist.nearest(landed).gap < 1e-6
    assert legs[0].length == pytest.approx(legs[1].length, abs=1e-6)


def test_what_is_sewn_to_the_waist_meets_it_laid() -> None:
    done = run(with_steps(skirt_recipe(front_darts=0), pleats_step(number=3, spacing="5 cm"), WAISTBAND))
    assert all(abs(walk_seam(done.pattern, seam).misfit) < 1e-3 for seam in done.pattern.seams.values())
    no_zip = {"opening-under-hips"}
    plain = {finding.code for finding in spoken_of(PLAIN)}
    assert {finding.code for finding in spoken_of(done)} - no_zip <= plain


def test_other_edges_only_move() -> None:
    done = pleated(number=2, spacing="5 cm")
    for word in ("side_seam", "center_front"):
        edges = [found.pattern.edges[f"{FRONT}/{word}"].length for found in (PLAIN, done)]
        assert edges[0] == pytest.approx(edges[1], abs=1e-6)
    assert done.pattern.edges[f"{FRONT}/hem"].length == pytest.approx(240.0 + 120.0, abs=1e-6)
    assert done.pattern.pieces[BACK] == PLAIN.pattern.pieces[BACK]


def test_the_total_is_told_and_pleats_that_lie_double_are_looked_at() -> None:
    codes = [
        note.code for note in pleated(number=2, depth="5 cm", spacing="4 cm", first_distance="8 cm").notes
    ]
    assert codes[-2:] == ["pleats-laid", "pleats-lie-double"]
    notes = pleated(number=2, depth="2 cm", spacing="4 cm").notes
    assert notes[-1].code == "pleats-laid"
    assert notes[-1].measured == pytest.approx(sewn_length(PLAIN.pattern, WAIST) + 80.0)
    assert notes[-1].message.startswith("Front, waist is ")


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"first_distance": "2 cm", "laid": "away"}, "fold-deeper-than-edge"),
        ({"first_distance": "19 cm", "laid": "toward"}, "fold-deeper-than-edge"),
        ({"number": 2, "spacing": "0 mm"}, "pleats-spacing"),
        ({"number": 5, "spacing": "5 cm"}, "slash-bounds"),
        ({"kind": "box", "number": 2, "spacing": "3 cm", "first_distance": "5 cm"}, "slash-order"),
        ({"depth": "0 mm"}, "amount-not-positive"),
        ({"across_point": f"{FRONT}/hem_side"}, "slash-ends-opposed"),
    ],
)
def test_refusals(changes: dict[str, Any], code: str) -> None:
    assert stopped(with_steps(skirt_recipe(front_darts=0), pleats_step(**changes))) == code


@pytest.mark.parametrize(("kind", "folds"), [("knife", 1), ("inverted", 2)])
def test_a_pressed_pleat_is_cut_even_across_too(kind: str, folds: int) -> None:
    """In a hem square to the folds nothing shows; in a leaning one both layers take its slope."""
    done = pleated(kind=kind, first_distance="9 cm", depth="3 cm", across_depth="4 cm", pressed=True)
    hem = done.pattern.edges[f"{FRONT}/hem"]
    assert hem.length == pytest.approx(240.0 + folds * 80.0, abs=0.2)
    assert Judge(pattern_to_data(done.pattern)).polygon(FRONT).is_valid
    piece = done.pattern.pieces[FRONT]
    line = next(one for one in piece.lines if one.name.endswith("near_line"))
    fold, level = line.path, line.path.end.y
    along = (fold.end - fold.start).unit()
    first_layer = hem.path.nearest(fold.end).distance_along
    for beyond in (5.0, 15.0, 35.0):
        place = hem.path.point_at(first_layer - beyond)
        out = place - fold.end
        landed = fold.end + along * (2.0 * out.dot(along)) - out
        assert landed.y == pytest.approx(level, abs=1e-6), "reflected at the fold it lies on the hem"


def test_fold_and_placement_lines_end_on_the_hem_as_trued() -> None:
    # Outside: shapely. A line that stops short of the hem is not notched there (0.1 mm is what is drawn).
    done = run(with_steps(skirt_recipe(front_darts=0, flare=6.0), pleats_step(number=3, spacing="5 cm")))
    piece = done.pattern.pieces[FRONT]
    hem = LineString(
        [
            (point.x, point.y)
            for edge in piece.outline
            if "/hem" in edge.name
            for point in edge.path.flattened(0.001)
        ]
    )
    ends = [line.path.end for line in piece.lines if line.kind in ("fold_line", "placement")]
    assert len(ends) == 6
    assert max(hem.distance(ShapelyPoint(end.x, end.y)) for end in ends) < 0.01
