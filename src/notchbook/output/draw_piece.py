"""A cut piece at full size: lines, notches, holes, grain and label."""

from collections.abc import Collection
from typing import Final

from notchbook.finish import CutNotch, CutPiece, DrillHole, FoldLines, GrainLine
from notchbook.geometry import Path, Point
from notchbook.output import line_styles as style
from notchbook.output.draw_label import LEAST_NAME, draw_label, label_size
from notchbook.output.free_place import BUTTON_RING, DRILL_RING, FreePlaces, Spot
from notchbook.output.label_tag import draw_tag, tagged
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pen import LineStyle, Pen, Text, circle
from notchbook.output.piece_words import line_words, named_edges, named_lines, notch_words
from notchbook.pattern import InternalLine

_HEAD = 7.0
"""Length of the heads of the grain line, mm."""

_HEAD_SHARE = 0.3
"""The longest that a head is, as a share of the grain line."""

_BAR = 2.0
"""Half the length of the bar across the end of a buttonhole, mm."""

_KIND_STYLES: Final = {
    "fold_line": style.FOLD,
    "buttonhole": style.BUTTONHOLE,
    "stitch_line": style.STITCHES,
    "roll_line": style.ROLL,
    "cut_line": style.SLASH,
}
"""Lines that are no level."""

_BRACKET = 14.0
"""How far the arms of the fold bracket stand into the piece, mm."""

_SMALL_TYPE, _FOLD_TYPE = 10.0, 11.0
"""Points, for the names of lines and what stands at notches; for the words at a fold."""


def draw_piece(pen: Pen, piece: CutPiece, info: PaperInfo) -> None:
    """Draw everything of a cut piece in its own frame; what its label has no room for beside it."""
    piece = tagged(piece, info)
    pen.stroke(piece.cut_line, style.CUT, f"{piece.name}/cut_line")
    for edge in piece.edges:
        if edge.width > 0.0:
            pen.stroke(edge.sew, style.SEW, edge.name)
    for dart in piece.darts:
        pen.stroke(dart.first_leg, style.DART_LEG)
        pen.stroke(dart.second_leg, style.DART_LEG)
        pen.stroke(dart.fold, style.DART_FOLD)
    for fold in piece.folds:
        _draw_laid(pen, fold)
    for notch in piece.notches:
        draw_notch(pen, notch)
    for hole in piece.drills:
        draw_drill(pen, hole)
    draw_grain(pen, piece.grain)
    free = FreePlaces(piece, label_size(piece, info))
    if not piece.label.is_clear:
        _write_on_strip(pen, piece, free)
    _draw_fold(pen, piece, free)
    _write_marks(pen, piece, free)
    grain = piece.grain.degrees
    words = named_lines(piece)
    laid_on = {fold.placement for fold in piece.folds}
    for line in piece.lines:
        pen.stroke(line.path, inner_style(line, laid_on), line.name)
        if line.kind == "buttonhole":
            draw_bars(pen, line.path)
        if line.name in words:
            write_along(pen, line.path, words[line.name], free, grain)
    _write_edges(pen, piece, free)
    _write_at_notches(pen, piece, free)
    draw_label(pen, piece, info)
    draw_tag(pen, piece, info)


def inner_style(line: InternalLine, laid_on: Collection[str]) -> LineStyle:
    """How a line inside a piece is drawn; ``laid_on`` names those on which a fold is laid."""
    if line.name in laid_on:
        return style.PLACEMENT
    return _KIND_STYLES.get(line.kind, style.LEVEL)


def draw_bars(pen: Pen, hole: Path) -> None:
    """The bars across both ends of a buttonhole."""
    for place, along in ((hole.start, hole.tangent_at(0.0)), (hole.end, hole.tangent_at(hole.length))):
        across = along.perpendicular() * _BAR
        pen.stroke(Path.line(place - across, place + across), style.BUTTONHOLE)


def draw_button(pen: Pen, place: Point, radius: float = BUTTON_RING) -> None:
    """A button: a ring with a slanted cross at its middle, unlike the upright cross of a drill hole."""
    pen.stroke(circle(place, radius), style.MARK)
    arm = Point(radius, radius) * 0.5
    for slant in (arm, arm.perpendicular()):
        pen.stroke(Path.line(place - slant, place + slant), style.MARK)


def _draw_laid(pen: Pen, fold: FoldLines) -> None:
    """The arrow from the fold line to the placement line, and the stitches that hold the fold down."""
    pen.stroke(fold.arrow, style.GRAIN)
    _arrow_head(pen, fold.arrow.end, fold.arrow.end - fold.arrow.start, min(5.0, 0.4 * fold.arrow.length))
    for stitches in fold.stitches:
        pen.stroke(stitches, style.DART_LEG)


def draw_notch(pen: Pen, notch: CutNotch) -> None:
    """A slit from the cut line inward; a notch that is only marked runs dashed to the sew line."""
    for place in notch.cut_positions:
        if notch.depth > 0.0:
            pen.stroke(Path.line(place, place + notch.direction * notch.depth), style.NOTCH)
        elif place.distance_to(notch.sew_position) > 0.1:
            pen.stroke(Path.line(place, notch.sew_position), style.NOTCH_MARK)
        else:
            tick = notch.direction * 3.0
            pen.stroke(Path.line(place - tick, place + tick), style.NOTCH_MARK)


def draw_drill(pen: Pen, hole: DrillHole) -> None:
    """The hole at its size, ringed, with a cross through its center."""
    pen.stroke(circle(hole.position, hole.diameter / 2.0), style.DRILL)
    pen.stroke(circle(hole.position, DRILL_RING), style.DRILL)
    for arm in (Point(DRILL_RING + 2.0, 0.0), Point(0.0, DRILL_RING + 2.0)):
        pen.stroke(Path.line(hole.position - arm, hole.position + arm), style.DRILL)


def draw_grain(pen: Pen, grain: GrainLine, longest: float = _HEAD) -> None:
    """The grain line: a head at each end, or at its end alone when the cloth lies one way; on a short line
    smaller heads, so that it is still seen as a line."""
    head = min(longest, _HEAD_SHARE * grain.start.distance_to(grain.end))
    pen.stroke(Path.line(grain.start, grain.end), style.GRAIN)
    _arrow_head(pen, grain.end, grain.end - grain.start, head)
    if not grain.one_way:
        _arrow_head(pen, grain.start, grain.start - grain.end, head)


def _arrow_head(pen: Pen, tip: Point, toward: Point, size: float) -> None:
    along = toward.unit()
    side = along.perpendicular() * (size * 0.28)
    base = tip - along * size
    pen.fill(Path.polyline((tip, base + side, base - side), closed=True), 0.0)


def _draw_fold(pen: Pen, piece: CutPiece, free: FreePlaces) -> None:
    if piece.fold is None:
        return
    words = line_words(piece.fold.name)
    grain = piece.grain.degrees
    if not piece.fold.on_fold:
        pen.stroke(piece.fold.path, style.CENTER)
        write_along(pen, piece.fold.path, words, free, grain)
        return
    line = piece.fold.path
    inward = line.tangent_at(0.0, "after").perpendicular() * _BRACKET
    first, last = line.point_at(line.length * 0.08), line.point_at(line.length * 0.92)
    pen.stroke(Path.polyline((first, first + inward, last + inward, last)), style.FOLD_BRACKET)
    _arrow_head(pen, first, -inward, 5.0)
    _arrow_head(pen, last, -inward, 5.0)
    beside = Path.line(first + inward * 1.12, last + inward * 1.12)
    said = f"{words}: place on fold"
    spot, standing = free.along(beside, said, _FOLD_TYPE, grain)
    _write_spot(pen, said, spot, _FOLD_TYPE, halo=standing != "free")  # never left out: half of it is cut


def write_along(pen: Pen, line: Path, words: str, free: FreePlaces, grain: float) -> None:
    """The name of a line along it, where nothing else stands; else where it covers least.

    It is left out where it would stand on other words, as on a strip that its label fills.
    """
    spot, standing = free.along(line, words, _SMALL_TYPE, grain)
    if standing != "on words":
        _write_spot(pen, words, spot, _SMALL_TYPE, halo=standing != "free")


def _write_spot(pen: Pen, words: str, spot: Spot, size: float, *, halo: bool) -> None:
    pen.write(Text(words, spot.base, size, degrees=spot.degrees, align="center", halo=halo))


def _write_on_strip(pen: Pen, piece: CutPiece, free: FreePlaces) -> None:
    """Number and name of a piece too narrow for a label: along a long edge, between its lines, so that it
    still has them when it is cut out."""
    words = f"{piece.number} {piece.title}"
    edges = sorted((edge.sew for edge in piece.edges), key=lambda path: -path.length)
    for size in (_SMALL_TYPE, LEAST_NAME):
        for edge in edges[:2]:
            spot = free.inside(edge, words, size, piece.grain.degrees)
            if spot is not None:
                pen.write(Text(words, spot.base, size, True, spot.degrees, "center"))
                return


def _write_marks(pen: Pen, piece: CutPiece, free: FreePlaces) -> None:
    for mark in piece.marks:
        if mark.kind == "button":
            draw_button(pen, mark.position)
            continue
        for arm in (Point(3.0, 0.0), Point(0.0, 3.0)):
            pen.stroke(Path.line(mark.position - arm, mark.position + arm), style.MARK)
        if mark.kind == "drill":  # its cross says all
            continue
        words = line_words(mark.name)
        spot, is_free = free.around(mark.position, words, _SMALL_TYPE, piece.grain.degrees)
        _write_spot(pen, words, spot, _SMALL_TYPE, halo=not is_free)


def _write_edges(pen: Pen, piece: CutPiece, free: FreePlaces) -> None:
    for named in named_edges(piece):
        _write_at(pen, named.words, free.inside(named.path, named.words, _SMALL_TYPE, piece.grain.degrees))


def _write_at_notches(pen: Pen, piece: CutPiece, free: FreePlaces) -> None:
    for notch in piece.notches:
        words = notch_words(piece, notch)
        if words:
            place, inward = notch.sew_position, notch.direction
            _write_at(pen, words, free.beside(place, inward, words, _SMALL_TYPE, piece.grain.degrees))


def _write_at(pen: Pen, words: str, spot: Spot | None) -> None:
    """Words at their spot; a small piece without room goes without them, its label comes first."""
    if spot is not None:
        _write_spot(pen, words, spot, _SMALL_TYPE, halo=False)
