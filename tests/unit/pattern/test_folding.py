"""The fold of a half piece, whole or divided by a cut."""

from dataclasses import replace

import pytest

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Piece
from notchbook.pattern.folding import edges_off_fold, fold_line, fold_points, fold_runs, folds


def _piece(corners: list[tuple[float, float]], kinds: dict[int, str]) -> Piece:
    points = [Point(x, y) for x, y in corners]
    count = len(points)
    outline = tuple(
        Edge(
            f"test.shape/e{index}",
            Path.line(points[index], points[(index + 1) % count]),
            f"test.shape/p{index}",
            f"test.shape/p{(index + 1) % count}",
            "fold" if index in kinds else "seam",
        )
        for index in range(count)
    )
    return Piece("test.shape", "Shape", outline, cut="fold")


DIVIDED = [(0.0, 0.0), (100.0, 0.0), (100.0, 40.0), (100.0, 90.0), (0.0, 90.0)]


def test_a_divided_fold_is_one_line() -> None:
    piece = _piece(DIVIDED, {1: "fold", 2: "fold"})
    assert [edge.name for edge in folds(piece)] == ["test.shape/e1", "test.shape/e2"]
    line = fold_line(piece)
    assert (line.start, line.end, line.length) == (Point(100.0, 0.0), Point(100.0, 90.0), 90.0)
    assert fold_points(piece) == {"test.shape/p1", "test.shape/p2", "test.shape/p3"}
    assert [edge.name for edge in edges_off_fold(piece)] == [
        "test.shape/e3",
        "test.shape/e4",
        "test.shape/e0",
    ]


def test_a_fold_that_runs_through_the_start_of_the_outline_is_one_line() -> None:
    turned = [*DIVIDED[2:], *DIVIDED[:2]]
    piece = _piece(turned, {0: "fold", 4: "fold"})
    assert [edge.name for edge in folds(piece)] == ["test.shape/e4", "test.shape/e0"]
    assert fold_line(piece).length == 90.0


def test_folds_round_a_corner_are_two() -> None:
    piece = _piece(DIVIDED, {0: "fold", 1: "fold"})
    assert len(fold_runs(piece)) == 2
    with pytest.raises(StepRefused) as refusal:
        folds(piece)
    assert refusal.value.code == "fold-missing"
    assert refusal.value.facts["count"] == 2


def test_no_fold_is_refused() -> None:
    with pytest.raises(StepRefused) as refusal:
        folds(_piece(DIVIDED, {}))
    assert refusal.value.facts["count"] == 0


def test_a_bent_fold_is_refused() -> None:
    piece = _piece(DIVIDED, {1: "fold"})
    bent = Path.polyline([Point(100.0, 0.0), Point(101.0, 20.0), Point(100.0, 40.0)])
    outline = tuple(replace(e, path=bent) if e.name.endswith("e1") else e for e in piece.outline)
    with pytest.raises(StepRefused) as refusal:
        folds(replace(piece, outline=outline))
    assert refusal.value.code == "fold-not-straight"
