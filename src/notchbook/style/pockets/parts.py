"""The pieces of a pocket as pieces of the pattern, cut as often as the piece that they are sewn to."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from notchbook.pattern import (
    CutAs,
    CutInstruction,
    Edge,
    EdgeKind,
    EdgeUse,
    Grain,
    InternalLine,
    Mark,
    Pattern,
    Piece,
    part_name,
)
from notchbook.pattern.names import instance_of
from notchbook.style._outlined import Side, outlined
from notchbook.style.pockets.placing import Placed
from notchbook.style.pockets.shape import corners_inside

PartGrain = Literal["matched", "own", "along", "bias"]
"""How the grain of a part runs: as that of the piece below it, so that stripes meet; square to its opening;
along its opening; on the bias."""


@dataclass(frozen=True, slots=True)
class Made:
    """How a part is called and cut."""

    name: str
    title: str
    instructions: tuple[CutInstruction, ...]
    grain: PartGrain = "matched"
    lines: tuple[InternalLine, ...] = ()


def cut_as(piece: Piece) -> CutAs:
    """One for each side of the body, but for what hangs on a piece that is cut once."""
    return "single" if piece.cut == "single" else "pair"


def part(placed: Placed, sides: Sequence[Side], kinds: dict[str, EdgeKind], made: Made) -> Piece:
    """The sides as a piece, where it comes to lie on its piece; a side is ``plain`` unless ``kinds`` says
    otherwise."""
    below = placed.piece
    told = [replace(side, kind=kinds.get(side.word, "plain")) for side in sides]
    return Piece(
        name=made.name,
        title=made.title,
        outline=outlined(made.name, told, clockwise=placed.runs_left),
        lines=made.lines,
        grain=Grain(grain_of(placed, made.grain), below.grain.one_way),
        cut=cut_as(below),
        side=below.side,
        instructions=made.instructions,
        rule=instance_of(made.name),
        stretches=below.stretches,
    )


def grain_of(placed: Placed, grain: PartGrain) -> float:
    """The direction of the grain of a part, degrees."""
    matched = placed.piece.grain.degrees
    if grain == "own":
        return (-placed.down).direction()
    if grain == "along":
        return placed.along.direction()
    return matched - 45.0 if grain == "bias" else matched


def walked(piece: Piece, words: Sequence[str], starts_at: str) -> tuple[EdgeUse, ...]:
    """Edges of a part that follow each other, from the point called ``starts_at``."""
    point = part_name(piece.name, starts_at)
    uses: list[EdgeUse] = []
    for word in words:
        edge: Edge = piece.edge(part_name(piece.name, word))
        uses.append(EdgeUse(edge.name, point))
        point = edge.end if edge.start == point else edge.start
    return tuple(uses)


def drilled(owner: str, sides: Sequence[Side], inside: float) -> tuple[Mark, ...]:
    """Marks for drill holes inside every corner of a shape, named on ``owner``."""
    return tuple(
        Mark(part_name(owner, f"{word}_drill"), place, "drill")
        for word, place in corners_inside(sides, inside)
    )


def with_drawn(
    pattern: Pattern, piece: Piece, lines: Sequence[InternalLine], marks: Sequence[Mark]
) -> Pattern:
    """The pattern with lines and marks drawn on a piece of it."""
    drawn = replace(piece, lines=(*piece.lines, *lines), marks=(*piece.marks, *marks))
    return pattern.with_pieces(drawn)
