"""The waist of one of the wearer's sides, from the opening to the center opposite, as sewn."""

from collections.abc import Sequence
from typing import NamedTuple

from notchbook.pattern import EdgeUse, Pattern, Place, locate, require, resolve, run_length, run_of, with_side
from notchbook.pattern.names import Side, last_word
from notchbook.pattern.resolve import Found
from notchbook.pattern.sewn import sewn_edge_length
from notchbook.recipe import EdgeName, PointName, StepParameters
from notchbook.units import TOLERANCES


class BandedEdge(StepParameters):
    """One edge (or group) of the waist and the end at which the band comes to it."""

    edge: EdgeName
    """A part of the waist."""
    starts_at: PointName
    """The end at which the band comes to it."""


class HalfWaist(NamedTuple):
    """One side of the waist: its run of edges and its sewn length, mm."""

    side: Side
    uses: tuple[EdgeUse, ...]
    length: float


def half_waist(pattern: Pattern, edges: Sequence[BandedEdge], side: Side) -> HalfWaist:
    """The run of one side; where the sides are alike, the same edges stand for both."""
    uses: list[EdgeUse] = []
    for banded in edges:
        if isinstance(resolve(pattern, banded.edge), Found):
            uses.append(EdgeUse(banded.edge, banded.starts_at, side))
            continue
        edge = with_side(banded.edge, side)
        require(pattern, edge)
        point = banded.starts_at if banded.starts_at in pattern.index else with_side(banded.starts_at, side)
        uses.append(EdgeUse(edge, point))
    return HalfWaist(side, tuple(uses), run_length(pattern, tuple(uses)))


def panel_of(pattern: Pattern, use: EdgeUse) -> frozenset[str]:
    """Whether the edge lies on a front or on a back, by the words of its piece."""
    piece = pattern.piece_of(require(pattern, use.edge)[0])
    return frozenset(last_word(piece.name).split("_")) & {"front", "back"}


def seam_between(pattern: Pattern, before: EdgeUse, after: EdgeUse) -> str:
    """What a mark is called where one edge of the waist goes on in the next: the side seam where front and
    back meet, else a panel."""
    return "panel" if panel_of(pattern, before) == panel_of(pattern, after) else "side seam"


def center_words(pattern: Pattern, half: HalfWaist) -> str:
    """What the center opposite the opening is called: after the edge that meets the waist there."""
    last = run_of(pattern, half.uses)[-1]
    end = last.edge.end if last.forward else last.edge.start
    piece = pattern.piece_of(last.edge.name)
    beside = [edge.name for edge in piece.outline if end in (edge.start, edge.end)]
    place = piece.points[end]
    beside += [
        line.name
        for line in piece.lines
        if min(line.path.start.distance_to(place), line.path.end.distance_to(place)) < TOLERANCES.closure
    ]
    centers = [last_word(name) for name in beside if last_word(name).startswith("center")]
    if centers:
        return centers[0].replace("_", " ")
    panel = {"front", "back"} & set(last_word(piece.name).split("_"))
    return f"center {panel.pop()}" if len(panel) == 1 else "center"


def place_on_half(pattern: Pattern, half: HalfWaist, distance: float) -> Place:
    """The place so far from the opening, mm, as sewn, on the edge where it lies."""
    rest = distance
    for use in half.uses:
        length = run_length(pattern, (use,))
        if rest <= length + TOLERANCES.sew_length or use is half.uses[-1]:
            break
        rest -= length
    return Place(use.edge, use.starts_at, min(rest, length))


def stations_on_half(pattern: Pattern, half: HalfWaist) -> list[float]:
    """Where seams, darts and notches lie along the half, mm from the opening, as sewn; its ends left out."""
    placed = [locate(pattern, notch.place) for notch in pattern.notches.values()]
    found: list[float] = []
    travelled = 0.0
    for step in run_of(pattern, half.uses):
        for one in placed:
            if one.edge.name == step.edge.name:
                along = one.distance if step.forward else step.edge.length - one.distance
                found.append(travelled + along)
        travelled += sewn_edge_length(pattern, step.edge)
        found.append(travelled)
    return [at for at in found if _NEAR_END < at < half.length - _NEAR_END]


_NEAR_END = 1.0
"""mm from an end of the waist within which a notch marks that end. Own judgment."""
