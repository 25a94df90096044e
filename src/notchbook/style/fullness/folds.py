"""An edge laid in folds: its stretches moved apart, and the edge in every fold between them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.geometry import Path, Transform
from notchbook.pattern import (
    Edge,
    Intake,
    InternalLine,
    LineKind,
    Located,
    Pattern,
    Piece,
    child_name,
    part_name,
)
from notchbook.style.fullness.fold_edge import outward_from
from notchbook.style.fullness.fold_shape import FoldShape, fold_shape, twice
from notchbook.style.fullness.opening import Opening
from notchbook.style.fullness.slash_lines import Slashes
from notchbook.style.fullness.spread import CutEdge, SlashLine, Spread, spread


@dataclass(frozen=True, slots=True)
class FoldsAt:
    """The folds at one line, in order from the named end: the names of their intakes, and whether each is
    laid toward that end. One for a single fold; two, away and toward, where two folds meet.

    ``after`` is the role of the stretch of the edge that follows.
    """

    names: tuple[str, ...]
    toward: tuple[bool, ...]
    after: str


@dataclass(frozen=True, slots=True)
class Folded:
    """The piece with its edge in folds, the edges that became several, what one fold of each line opens."""

    piece: Piece
    splits: dict[str, tuple[str, ...]]
    spread: Spread
    openings: tuple[Opening, ...]


@dataclass(frozen=True, slots=True)
class _Fold:
    """One fold as drawn: its two legs in the direction of the outline, its intake and its two lines."""

    legs: tuple[Edge, Edge]
    intake: Intake
    lines: tuple[InternalLine, InternalLine]


def folded(
    pattern: Pattern,
    edge: str,
    slashes: Slashes,
    folds: Sequence[FoldsAt],
    depth: tuple[float, float],
    stitched: float,
) -> Folded:
    """The piece laid in folds at every slash, each so deep at the edge and across (mm).

    StepRefused as slashes are, and ``fold-deeper-than-edge``.
    """
    openings = [
        Opening(start.position, end.position, 2.0 * depth[0], 2.0 * depth[1], not slashes.forward)
        for start, end in slashes.places
    ]
    lines = [
        _line(place, opening, len(at.names))
        for place, opening, at in zip(slashes.places, openings, folds, strict=True)
    ]
    made = spread(slashes.piece, lines, slashes.forward, level=False)
    pen = _Pen(pattern, edge, slashes, made, stitched)
    drawn = [
        tuple(pen.folds_at(index, opening, at))
        for index, (opening, at) in enumerate(zip(openings, folds, strict=True))
    ]
    outline, splits = pen.outline(drawn, folds)
    every = [fold for at in drawn for fold in at]
    piece = replace(
        made.piece,
        outline=outline,
        intakes=(*made.piece.intakes, *(fold.intake for fold in every)),
        lines=(*made.piece.lines, *(line for fold in every for line in fold.lines)),
    )
    return Folded(piece, splits, made, tuple(openings))


def _line(place: tuple[Located, Located], opening: Opening, count: int) -> SlashLine:
    whole = opening if count == 1 else twice(opening)
    return SlashLine(place[0], place[1], whole.at_start, whole.at_end)


@dataclass(frozen=True, slots=True)
class _Pen:
    """Draws the folds of one edge."""

    pattern: Pattern
    edge: str
    slashes: Slashes
    made: Spread
    stitched: float

    def folds_at(self, index: int, opening: Opening, at: FoldsAt) -> Iterator[_Fold]:
        """The folds at one line, from the named end."""
        before = self.made.motions[index]
        for number, (name, toward) in enumerate(zip(at.names, at.toward, strict=True)):
            is_last = number + 1 == len(at.names)
            after = self.made.motions[index + 1] if is_last else opening.motion().then(before)
            ahead = toward == self.slashes.forward
            place = self.slashes.places[index][0]
            edge = outward_from(self.pattern, self.edge, self.slashes.piece, place, ahead=ahead)
            shape = fold_shape(edge, replace(opening, leftward=ahead))
            ends = [part_name(name, "near_mouth"), part_name(name, "far_mouth")]
            if len(at.names) > 1:
                ends[0 if number else 1] = part_name(at.names[0].rpartition("/")[0], "center_mouth")
            motion = after if toward else before
            yield self._fold(name, (shape, opening, motion), toward, (ends[0], ends[1]))
            before = after

    def _fold(
        self,
        name: str,
        drawn: tuple[FoldShape, Opening, Transform],
        toward: bool,
        mouths: tuple[str, str],
    ) -> _Fold:
        """The fold, moved with the part that its fold line lies on."""
        shape, opening, motion = drawn
        near, far = shape.to_inner, shape.to_placement
        lines = [Path.line(opening.start, opening.end), shape.placement]
        kinds: list[LineKind] = ["fold_line", "placement"]
        if toward:
            near, far = shape.to_placement.reversed(), shape.to_inner.reversed()
            lines, kinds = lines[::-1], kinds[::-1]
        point = part_name(name, "point")
        near_leg = Edge(part_name(name, "near_leg"), near.transformed(motion), mouths[0], point, "leg")
        far_leg = Edge(part_name(name, "far_leg"), far.transformed(motion), point, mouths[1], "leg")
        drawn_lines = (
            InternalLine(part_name(name, "near_line"), lines[0].transformed(motion), kinds[0]),
            InternalLine(part_name(name, "far_line"), lines[1].transformed(motion), kinds[1]),
        )
        legs, ends = (near_leg, far_leg), drawn_lines
        if not self.slashes.forward:
            legs, ends = (far_leg.reversed(), near_leg.reversed()), drawn_lines[::-1]
        intake = Intake(
            name,
            self.edge,
            legs[0].name,
            legs[1].name,
            point,
            "second_leg" if toward == self.slashes.forward else "first_leg",
            "pleat",
            ends[0].name,
            ends[1].name,
            self.stitched,
        )
        return _Fold(legs, intake, drawn_lines)

    def outline(
        self, drawn: Sequence[tuple[_Fold, ...]], folds: Sequence[FoldsAt]
    ) -> tuple[tuple[Edge, ...], dict[str, tuple[str, ...]]]:
        """The outline with the stretches of the edge and the legs between them, and what was split."""
        splits: dict[str, tuple[str, ...]] = {}
        outline: list[Edge] = []
        for edge in self.made.piece.outline:
            met = self.made.edges.get(edge.name)
            at = [index for index, place in enumerate(self.slashes.places) if place[0].edge.name == edge.name]
            if met is None or not at:
                outline.append(edge)
                continue
            parts = self._stretches(edge, met, at, folds)
            splits[edge.name] = tuple(part.name for part in parts)
            legs = [self._legs(drawn[index]) for index in self._in_outline(at)]
            outline.extend(_threaded(parts, legs))
        return tuple(outline), splits

    def _in_outline(self, at: Sequence[int]) -> Sequence[int]:
        return at if self.slashes.forward else at[::-1]

    def _legs(self, folds: Sequence[_Fold]) -> list[Edge]:
        """The legs at one line in the direction of the outline."""
        ordered = folds if self.slashes.forward else folds[::-1]
        return [leg for fold in ordered for leg in fold.legs]

    def _stretches(self, edge: Edge, met: CutEdge, at: Sequence[int], folds: Sequence[FoldsAt]) -> list[Edge]:
        """The stretches of one edge between the folds, moved with their parts, in its own direction."""
        roles = ["near", *(folds[index].after for index in at)]
        if not self.slashes.forward:
            roles = roles[::-1]
        bounds = [0.0, *met.places, met.old.length]
        return [
            replace(
                edge,
                name=child_name(edge.name, role),
                path=met.old.path.between(low, high).transformed(motion),
            )
            for role, (low, high), motion in zip(roles, pairwise(bounds), met.motions, strict=True)
        ]


def _threaded(parts: Sequence[Edge], legs: Sequence[Sequence[Edge]]) -> list[Edge]:
    """Stretches and legs in order, joined exactly, each stretch ending where its legs begin."""
    row: list[Edge] = [parts[0]]
    for part, between in zip(parts[1:], legs, strict=True):
        row[-1] = replace(row[-1], end=between[0].start)
        row.extend(between)
        row.append(replace(part, start=between[-1].end))
    for index, (before, after) in enumerate(pairwise(row)):
        row[index + 1] = replace(after, path=after.path.with_start(before.path.end))
    return row
