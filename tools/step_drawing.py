"""One piece as a patternmaker marks it, as SVG: outline, old outline, lines, notches, gathers, folds, grain.

All in mm of the piece, y down.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from notchbook.finish.folds import fold_lines
from notchbook.finish.marking import mark_piece
from notchbook.geometry import Cubic, Path, Point
from notchbook.pattern import Intake, Pattern, Piece
from notchbook.pattern.resolve import require
from notchbook.pattern.sewn import locate

STYLE: Final = (
    "path{fill:none;stroke:#1c2530;stroke-width:1.5;vector-effect:non-scaling-stroke}"
    ".cloth{fill:#f0ede2;stroke:none}"
    ".leg{stroke-width:1}.on_fold{stroke-dasharray:14 4 2 4}"
    ".line{stroke:#8a94a0;stroke-width:.8}.fold_line{stroke:#1f5f8b;stroke-width:1}"
    ".placement{stroke:#1f5f8b;stroke-width:1;stroke-dasharray:7 4}"
    ".gathers,.pressed{stroke:#1f5f8b;stroke-width:1.1}.grain{stroke:#5d6873;stroke-width:1}"
    ".old{stroke:#b4432f;stroke-width:1;stroke-dasharray:5 4}"
    "text{font-family:sans-serif;fill:#1c2530}"
)

_NOTCH: Final = 9.0
_DRILL: Final = 3.0
_HEAD: Final = 9.0
_GRAIN_SHARE: Final = 0.6
"""How much of the free room along the grain its arrow takes."""

_WAVE: Final = 7.0
"""How far the line of gathers swings from the edge, and half of its length, mm."""

_PRESSED_AT: Final = 0.25
"""How far down its legs a dart shows which way it is pressed, as a share."""


def drawn_piece(pattern: Pattern, piece: Piece, old: Piece | None) -> str:
    """The piece, with its old outline under it where it had one."""
    outlined = [_path("cloth", piece.sew_line)]
    if old is not None:
        outlined.append(_path("old", old.sew_line))
    classes = {"fold_line": "fold_line", "placement": "placement", "dart_leg": "leg"}
    outlined += [_path(classes.get(line.kind, "line"), line.path) for line in piece.lines]
    for edge in piece.outline:
        outlined.append(_path({"leg": "leg", "fold": "on_fold"}.get(edge.kind, ""), edge.path))
    drawn = [*outlined, *_notches(pattern, piece), *_drills(piece), *_intakes(pattern, piece), _grain(piece)]
    return "".join(drawn)


def path_data(path: Path) -> str:
    """The path for SVG, y down, to a tenth of a millimeter."""
    words = [f"M{path.start.x:.1f} {-path.start.y:.1f}"]
    for segment in path.segments:
        points = (
            (segment.start_handle, segment.end_handle, segment.end)
            if isinstance(segment, Cubic)
            else (segment.end,)
        )
        letter = "C" if isinstance(segment, Cubic) else "L"
        words.append(letter + " ".join(f"{point.x:.1f} {-point.y:.1f}" for point in points))
    return "".join(words).replace("-0.0", "0.0")


def _path(kind: str, path: Path) -> str:
    return f'<path class="{kind}" d="{path_data(path)}"/>' if kind else f'<path d="{path_data(path)}"/>'


def _notches(pattern: Pattern, piece: Piece) -> Iterator[str]:
    """A tick into the piece at every notch."""
    for notch in pattern.notches.values():
        found = locate(pattern, notch.place)
        if found.piece == piece.name:
            inward = found.edge.path.tangent_at(found.distance).perpendicular()
            yield _path("", Path.line(found.position, found.position + inward * _NOTCH))


def _drills(piece: Piece) -> Iterator[str]:
    """A cross where a hole is drilled."""
    for mark in piece.marks:
        if mark.kind == "drill":
            for arm in (Point(_DRILL, 0.0), Point(0.0, _DRILL)):
                yield _path("", Path.line(mark.position - arm, mark.position + arm))


def _intakes(pattern: Pattern, piece: Piece) -> Iterator[str]:
    for intake in piece.intakes:
        if intake.is_drawn_in:
            for name in require(pattern, intake.edge):
                yield _path("gathers", _wave(piece.edge(name).path))
        elif not intake.is_folded:
            yield _pressed(piece, intake)
    for fold in fold_lines(piece):
        yield _arrow("pressed", fold.arrow.start, fold.arrow.end, 6.0)
        yield from (_path("pressed", stitches) for stitches in fold.stitches)


def _wave(path: Path) -> Path:
    """A line that swings inside the edge from its one end to the other."""
    steps = max(2, round(path.length / _WAVE))
    points = []
    for step in range(steps + 1):
        at = path.length * step / steps
        inward = path.tangent_at(at).perpendicular()
        points.append(path.point_at(at) + inward * (_WAVE if step % 2 else 1.0))
    return Path.polyline(points)


def _pressed(piece: Piece, intake: Intake) -> str:
    """An arrow from the leg that is laid over to the one that the cloth lies toward."""
    first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    ends = [first.point_at(first.length * _PRESSED_AT), second.point_at(second.length * (1.0 - _PRESSED_AT))]
    if intake.fold_toward == "first_leg":
        ends.reverse()
    return _arrow("pressed", ends[0], ends[1], 6.0)


def grain_line(piece: Piece) -> Path:
    """The grain line within the piece, clear of what is drawn on it, as it stands on the papers."""
    legs = [line.path for line in piece.lines if line.kind == "dart_leg"]
    line, _ = mark_piece(piece.sew_line, piece.grain, (), (), legs, one_way=True)
    middle, half = line.start.lerp(line.end, 0.5), (line.end - line.start) * (_GRAIN_SHARE / 2.0)
    return Path.line(middle - half, middle + half)


def _grain(piece: Piece) -> str:
    line = grain_line(piece)
    return _arrow("grain", line.start, line.end, _HEAD)


def _arrow(kind: str, start: Point, end: Point, head: float) -> str:
    if start.distance_to(end) < 1.0:
        return ""
    back = (start - end).unit() * head
    side = back.perpendicular() * 0.4
    return _path(kind, Path.line(start, end)) + _path(
        kind, Path.polyline([end + back + side, end, end + back - side])
    )
