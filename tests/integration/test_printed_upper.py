"""Bodice and sleeve as printed on tiles: the tiles put together, and the cap walked along the armhole.

Lines are read back from the PDF by the other means of support.printed; the model only says which printed
points belong to which edge, and in what order. Common practice: what is sewn together walks to the thread.
"""

import io
from collections.abc import Iterator
from functools import cache

import numpy as np
import pikepdf
import pytest
import shapely
from numpy.typing import NDArray

from notchbook.finish import finish, production_table
from notchbook.finish.cut_piece import CutEdge
from notchbook.geometry import Path, Point
from notchbook.output.layout import Placement
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.output.tiling import Paper, Tiling
from support.papers import INFO
from support.printed import Stroke, strokes_of
from support.upper_patterns import drafted

Points = NDArray[np.float64]

WALK = 0.1
"""mm by which cap and armhole may miss each other on paper."""

STEP = 0.5
"""mm between the points that are read."""


@cache
def printed(paper: Paper) -> tuple[tuple[tuple[float, float], ...], Tiling]:
    """All points of sew lines on the tiles, put together by their frames, and the tiling."""
    data, tiling = tiled_pdf(finish(drafted().pattern, production_table()), INFO, paper)
    return tuple(_together(pikepdf.open(io.BytesIO(data)), tiling, {})), tiling


def _together(pdf: pikepdf.Pdf, tiling: Tiling, slip: dict[str, float]) -> Iterator[tuple[float, float]]:
    side, below = tiling.paper.margins
    for tile, page in zip(tiling.printed, list(pdf.pages)[1:], strict=True):
        dx, dy = tile.frame.min_x - side + slip.get(tile.name, 0.0), tile.frame.min_y - below
        for stroke in strokes_of(page):
            if _is_sew_line(stroke):
                yield from ((x + dx, y + dy) for x, y in stroke.samples(STEP))


def _is_sew_line(stroke: Stroke) -> bool:
    return len(stroke.dash) == 2 and abs(stroke.dash[0] - 4.0) < 1e-3 and abs(stroke.dash[1] - 2.0) < 1e-3


class PrintedEdge:
    """One edge on paper, from the underarm on."""

    def __init__(
        self, name: str, paper: Paper, points: tuple[tuple[float, float], ...] | None = None
    ) -> None:
        read, tiling = printed(paper)
        self.placement, edge = _found(tiling, name)
        self.line = _line(edge.sew.transformed(self.placement.motion))
        if self._is_run_to_the_underarm(edge):
            self.line = self.line.reverse()
        self.points = _ordered(points if points is not None else read, self.line)

    def _is_run_to_the_underarm(self, edge: CutEdge) -> bool:
        """Whether its end touches a side seam or an underarm seam of the same piece."""
        seams = [
            one.sew
            for one in self.placement.piece.edges
            if "side_seam" in one.source or "_seam" in one.source
        ]
        end = edge.sew.end
        return any(min(end.distance_to(seam.start), end.distance_to(seam.end)) < 1e-6 for seam in seams)

    @property
    def length(self) -> float:
        """Its whole length as printed, mm."""
        return self.to(None)

    def to(self, word: str | None) -> float:
        """Its length from the underarm to a notch whose name ends in the word, as printed, mm."""
        steps = np.linalg.norm(np.diff(self.points, axis=0), axis=1)
        along = np.concatenate([[0.0], np.cumsum(steps)])
        if word is None:
            return float(along[-1])
        notch = next(
            one
            for one in self.placement.piece.notches
            if one.name.rpartition("/")[2].partition("@")[0] == word
            and self.line.distance(shapely.Point(*self._placed(one.sew_position))) < 0.01
        )
        place = np.array(self._placed(notch.sew_position))
        near = int(np.argmin(np.linalg.norm(self.points - place, axis=1)))
        ahead = self.points[min(near + 1, len(self.points) - 1)] - self.points[max(near - 1, 0)]
        return float(along[near] + (place - self.points[near]) @ ahead / np.linalg.norm(ahead))

    def _placed(self, point: Point) -> tuple[float, float]:
        moved = self.placement.motion.apply(point)
        return moved.x, moved.y


def _found(tiling: Tiling, name: str) -> tuple[Placement, CutEdge]:
    for placement in tiling.sheet.placements:
        for edge in placement.piece.edges:
            if edge.source == name:
                return placement, edge
    raise KeyError(name)


def _line(path: Path) -> shapely.LineString:
    return shapely.LineString([(point.x, point.y) for point in path.flattened(0.002)])


def _ordered(points: tuple[tuple[float, float], ...], line: shapely.LineString) -> Points:
    """The printed points that lie on the line, in its order, each once."""
    cloud = np.asarray(shapely.points(np.array(points)))
    near = cloud[shapely.dwithin(cloud, line, 0.05)]
    along = shapely.line_locate_point(line, near)
    order = np.argsort(along, kind="stable")
    kept = np.concatenate([[True], np.diff(along[order]) > STEP / 10.0])
    found: Points = shapely.get_coordinates(near[order][kept])
    return found


@pytest.mark.parametrize("paper", ["a4", "letter", "both"])
@pytest.mark.parametrize("which", ["front", "back"])
def test_the_printed_cap_walks_along_the_printed_armhole(which: str, paper: Paper) -> None:
    armhole = PrintedEdge(f"bodice.{which}/armhole", paper)
    cap = PrintedEdge(f"sleeve.sleeve/cap_{which}", paper)
    ease = abs(drafted().pattern.seams[f"sleeve/{which}_armhole"].ease)
    assert cap.length - armhole.length == pytest.approx(ease, abs=WALK)
    assert cap.to("balance_notch") == pytest.approx(armhole.to("balance_notch"), abs=WALK)


def test_no_point_is_missing_on_the_printed_edges() -> None:
    """Else a length could be the straight way over a gap."""
    for name in (
        "bodice.front/armhole",
        "bodice.back/armhole",
        "sleeve.sleeve/cap_front",
        "sleeve.sleeve/cap_back",
    ):
        points = PrintedEdge(name, "both").points
        assert np.linalg.norm(np.diff(points, axis=0), axis=1).max() < 2.5 * STEP


def test_a_tile_that_is_left_out_is_seen() -> None:
    points, _ = printed("both")
    whole = PrintedEdge("sleeve.sleeve/cap_front", "both")
    middle = whole.points[len(whole.points) // 2]
    torn = tuple(p for p in points if abs(p[0] - middle[0]) > 30.0 or abs(p[1] - middle[1]) > 30.0)
    holed = PrintedEdge("sleeve.sleeve/cap_front", "both", torn)
    assert np.linalg.norm(np.diff(holed.points, axis=0), axis=1).max() > 10.0
