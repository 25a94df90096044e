"""A piece as it lies on the sheet: its edges, inner lines, notches and named points."""

from notchbook.errors import InputError, NameLost
from notchbook.finish.inner_darts import drawn_marks
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    CutAs,
    Edge,
    EdgeKind,
    LineKind,
    Mark,
    Notch,
    NotchKind,
    Pattern,
    Piece,
    locate,
    spoken,
    title_of,
)
from notchbook.workroom.answers.form import Answer, At, Named
from notchbook.workroom.answers.inner_room import inner_room
from notchbook.workroom.answers.lines import at, path_text
from notchbook.workroom.answers.taken_up import DrawnIn, LaidFold, drawn_in_stretches, laid_folds
from notchbook.workroom.reader import Reader

_ON_LINE = 0.5
"""mm; a mark nearer to a line stands on it."""

_CUT_WORDS: dict[CutAs, str] = {"fold": "on fold", "pair": "pair", "single": ""}


class SheetEdge(Answer):
    """One edge; ``outward`` points from its middle away from the piece, at length 1."""

    name: str
    word: str
    said: str
    kind: EdgeKind
    path: str
    length: float
    length_text: str
    start: str
    end: str
    middle: At
    outward: At


class SheetLine(Answer):
    """A line inside the piece."""

    name: str
    word: str
    kind: LineKind
    path: str
    words_at: At
    upright: bool
    length: float


class SheetPoint(Answer):
    """A named corner or mark; ``mark`` says that it is drawn, ``button`` that a button is sewn on there."""

    name: str
    said: str
    place: At
    mark: bool
    button: bool


class SheetNotch(Answer):
    """A notch: where it stands on the sew line and which way it points, at length 1."""

    name: str
    said: str
    kind: NotchKind
    place: At
    outward: At


class SheetPiece(Answer):
    """One piece in its own frame, mm, y up, grain along +y; ``low`` and ``high`` are its box."""

    name: str
    title: str
    cut: str
    derived: bool
    low: At
    high: At
    outline: str
    edges: tuple[SheetEdge, ...]
    lines: tuple[SheetLine, ...]
    points: tuple[SheetPoint, ...]
    notches: tuple[SheetNotch, ...]
    intakes: tuple[Named, ...]
    folds: tuple[LaidFold, ...]
    drawn_in: tuple[DrawnIn, ...]
    grain_low: At
    grain_high: At
    title_at: At
    title_width: float
    title_height: float


def sheet_piece(pattern: Pattern, piece: Piece, reader: Reader) -> SheetPiece:
    """The piece as the sheet shows it."""
    room = inner_room(piece)
    box = piece.bounds
    buttons = {mark.name for mark in piece.marks if mark.kind == "button"}
    plain = {mark.name for mark in drawn_marks(piece) if not _stands_on_a_center_or_hem(piece, mark)}
    marks = buttons | plain
    return SheetPiece(
        name=piece.name,
        title=title_of(piece),
        cut=_cut_text(piece),
        derived=piece.rule is not None,
        low=At(x=round(box.min_x, 3), y=round(box.min_y, 3)),
        high=At(x=round(box.max_x, 3), y=round(box.max_y, 3)),
        outline=path_text(piece.sew_line) + "Z",
        edges=tuple(_edge(edge, reader) for edge in piece.outline),
        lines=tuple(
            SheetLine(
                name=line.name,
                word=_word(line.name),
                kind=line.kind,
                path=path_text(line.path),
                words_at=at(_words_place(line.path, room.low, room.high)),
                upright=_is_upright(line.path),
                length=round(line.path.length, 3),
            )
            for line in piece.lines
        ),
        points=tuple(
            SheetPoint(
                name=name, said=spoken(name), place=at(place), mark=name in marks, button=name in buttons
            )
            for name, place in piece.points.items()
        ),
        notches=tuple(_notches(pattern, piece)),
        intakes=tuple(Named(name=one.name, said=spoken(one.name)) for one in piece.intakes),
        folds=laid_folds(piece),
        drawn_in=drawn_in_stretches(pattern, piece, reader),
        grain_low=at(room.low),
        grain_high=at(room.high),
        title_at=at(room.title),
        title_width=round(room.title_width, 3),
        title_height=round(room.title_height, 3),
    )


def _edge(edge: Edge, reader: Reader) -> SheetEdge:
    middle, outward = _middle(edge.path)
    return SheetEdge(
        name=edge.name,
        word=_word(edge.name),
        said=spoken(edge.name),
        kind=edge.kind,
        path=path_text(edge.path),
        length=round(edge.length, 6),
        length_text=reader.text(edge.length),
        start=edge.start,
        end=edge.end,
        middle=middle,
        outward=outward,
    )


def _middle(path: Path) -> tuple[At, At]:
    half = path.length / 2.0
    if half == 0.0:  # an empty dart keeps its legs, with no length
        return at(path.start), At(x=0.0, y=1.0)
    along = path.tangent_at(half)
    return at(path.point_at(half)), At(x=round(along.y, 4) + 0.0, y=round(-along.x, 4) + 0.0)


def _stands_on_a_center_or_hem(piece: Piece, mark: Mark) -> bool:
    """Whether a mark only names a place of a line that is plain from the drawing."""
    plain = (edge for edge in piece.outline if edge.kind in ("fold", "hem"))
    return any(edge.path.nearest(mark.position).gap < _ON_LINE for edge in plain)


def _is_upright(path: Path) -> bool:
    chord = path.end - path.start
    return abs(chord.y) > abs(chord.x)


def _words_place(path: Path, low: Point, high: Point) -> Point:
    """Where the name of an inner line stands: near the end that is farther from the grain line."""
    ends = (path.point_at(0.2 * path.length), path.point_at(0.8 * path.length))
    return max(ends, key=lambda end: min(abs(end.x - low.x), abs(end.x - high.x)))


def _notches(pattern: Pattern, piece: Piece) -> list[SheetNotch]:
    found: list[SheetNotch] = []
    for notch in pattern.notches.values():
        shown = _notch(pattern, piece, notch)
        if shown is not None:
            found.append(shown)
    return found


def _notch(pattern: Pattern, piece: Piece, notch: Notch) -> SheetNotch | None:
    """The notch, when it stands on this piece; one that has lost its edge is told by the checks."""
    try:
        place = locate(pattern, notch.place)
    except (NameLost, InputError):
        return None
    if place.piece != piece.name or place.edge.length == 0.0:
        return None
    along = place.edge.path.tangent_at(place.distance)
    return SheetNotch(
        name=notch.name,
        said=notch.purpose or spoken(notch.name),
        kind=notch.kind,
        place=at(place.position),
        outward=At(x=round(along.y, 4) + 0.0, y=round(-along.x, 4) + 0.0),
    )


def _cut_text(piece: Piece) -> str:
    """How the piece is cut: ``cut 1 pair self, 1 fusible``."""
    words = ", ".join(
        " ".join(word for word in (str(one.times), _CUT_WORDS[piece.cut], one.material) if word)
        for one in piece.instructions
    )
    return f"cut {words}"


def _word(name: str) -> str:
    """What a part is called on its own piece: ``side seam (above)``."""
    return spoken(name).split(", ", 1)[-1]
