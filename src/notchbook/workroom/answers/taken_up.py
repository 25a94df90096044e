"""How pleats are laid, and where an edge is gathered or eased: shown on the sheet as on the paper."""

from notchbook.finish.folds import fold_lines
from notchbook.geometry import Path, Point
from notchbook.pattern import Intake, Pattern, Piece, require, spoken
from notchbook.workroom.answers.form import Answer, At
from notchbook.workroom.answers.lines import at, path_text
from notchbook.workroom.reader import Reader


class LaidFold(Answer):
    """One pleat or tuck: an arrow from its fold line to its placement line, and its lines of stitches."""

    name: str
    said: str
    start: At
    end: At
    stitches: tuple[str, ...]


class DrawnIn(Answer):
    """A stretch of an edge that is gathered or eased in: its edges, its two limits, and what it comes to."""

    name: str
    said: str
    kind: str
    paths: tuple[str, ...]
    limits: tuple[tuple[At, At], ...]


def laid_folds(piece: Piece) -> tuple[LaidFold, ...]:
    """The open pleats and tucks of the piece."""
    return tuple(
        LaidFold(
            name=fold.name,
            said=spoken(fold.name),
            start=at(fold.arrow.start),
            end=at(fold.arrow.end),
            stitches=tuple(map(path_text, fold.stitches)),
        )
        for fold in fold_lines(piece)
    )


def drawn_in_stretches(pattern: Pattern, piece: Piece, reader: Reader) -> tuple[DrawnIn, ...]:
    """The stretches of the piece that are drawn in; one that takes up nothing is not shown."""
    found = (one for one in piece.intakes if one.is_drawn_in and one.amount > 0.0)
    return tuple(_drawn_in(pattern, piece, one, reader) for one in found)


def _drawn_in(pattern: Pattern, piece: Piece, intake: Intake, reader: Reader) -> DrawnIn:
    own = {edge.name for edge in piece.outline}
    edges = [pattern.edges[name] for name in require(pattern, intake.edge) if name in own]
    length = sum(edge.length for edge in edges)
    first, last = edges[0].path, edges[-1].path
    word = "gathered" if intake.kind == "gather" else "eased"
    return DrawnIn(
        name=intake.name,
        said=f"{word}, {reader.text(length)} to {reader.text(length - intake.amount)}",
        kind=intake.kind,
        paths=tuple(path_text(edge.path) for edge in edges),
        limits=(_limit(first, 0.0), _limit(last, last.length)),
    )


def _limit(path: Path, distance: float) -> tuple[At, At]:
    """Where a stretch ends, and the way outward there, at length 1."""
    along: Point = path.tangent_at(distance)
    return at(path.point_at(distance)), At(x=round(along.y, 4) + 0.0, y=round(-along.x, 4) + 0.0)
