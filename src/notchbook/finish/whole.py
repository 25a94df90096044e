"""The whole piece from its half: reflected at the fold and joined there."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from notchbook.finish.chain import chained
from notchbook.geometry import Path, Transform
from notchbook.pattern import InternalLine, Mark, Piece, Side, with_side
from notchbook.pattern.folding import edges_off_fold, fold_line, fold_points
from notchbook.units import TOLERANCES

DRAWN_HALF: Side = "right"
"""Face up, with fronts drawn to the left of their center and backs to the right of it, the drawn half
is on the wearer's right."""

REFLECTED_HALF: Side = "left"
"""The half that is made; its edges run the other way round."""


@dataclass(frozen=True, slots=True)
class Whole:
    """A whole piece, with what each of its names stands for on the half."""

    piece: Piece
    sources: dict[str, str]


def whole_of(piece: Piece) -> Whole:
    """The half piece reflected at its fold and joined to itself. Names get their side; the points on
    the fold belong to both. Refused as :func:`notchbook.pattern.folding.folds`."""
    fold = fold_line(piece)
    reflection = Transform.reflection(fold.start, fold.end)
    shared = fold_points(piece)
    sources: dict[str, str] = {}

    def sided(side: Side) -> Callable[[str], str]:
        def rename(name: str) -> str:
            new = name if name in shared else with_side(name, side)
            sources[new] = name
            return new

        return rename

    drawn = piece.renamed(sided(DRAWN_HALF))
    other = piece.transformed(reflection).renamed(sided(REFLECTED_HALF))
    whole = replace(
        drawn,
        name=piece.name,
        outline=(*edges_off_fold(drawn), *edges_off_fold(other)),
        intakes=(*drawn.intakes, *other.intakes),
        lines=_joined_lines(drawn.lines, other.lines, fold),
        marks=_joined_marks(drawn.marks, other.marks),
        inner_darts=(*drawn.inner_darts, *other.inner_darts),
    )
    return Whole(whole, sources)


def _joined_lines(
    drawn: tuple[InternalLine, ...], other: tuple[InternalLine, ...], fold: Path
) -> tuple[InternalLine, ...]:
    """Lines that reach the fold run on across it; one that lies on the fold stands once."""
    found: list[InternalLine] = []
    for line, mate in zip(drawn, other, strict=True):
        at_start = fold.nearest(line.path.start).gap <= TOLERANCES.closure
        at_end = fold.nearest(line.path.end).gap <= TOLERANCES.closure
        if at_start and at_end:
            found.append(line)
        elif at_end:
            found.append(replace(line, path=_through(line.path, mate.path.reversed())))
        elif at_start:
            found.append(replace(line, path=_through(mate.path.reversed(), line.path)))
        else:
            found.extend((line, mate))
    return tuple(found)


def _through(first: Path, second: Path) -> Path:
    return chained((first, second))


def _joined_marks(drawn: tuple[Mark, ...], other: tuple[Mark, ...]) -> tuple[Mark, ...]:
    found: list[Mark] = []
    for mark, mate in zip(drawn, other, strict=True):
        found.append(mark)
        if mark.position.distance_to(mate.position) > TOLERANCES.closure:
            found.append(mate)
    return tuple(found)
