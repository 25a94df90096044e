"""A picture of all pieces for the screen: small on purpose, with names large enough to read there.

It is drawn anew and not the big sheet made small: lines would fade and words could not be read.
"""

from collections.abc import Sequence

from notchbook.errors import OutputError
from notchbook.finish import CutPiece, GrainLine
from notchbook.geometry import Box, Path, Point, Transform
from notchbook.output import line_styles as style
from notchbook.output.draw_label import label_size
from notchbook.output.draw_piece import draw_grain
from notchbook.output.free_place import FreePlaces, Spot
from notchbook.output.layout import Placement, Sheet, lay_out
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pdf_pen import PdfPaper
from notchbook.output.pen import MM_PER_POINT, Pen, Text, circle
from notchbook.output.piece_words import line_words, named_edges, named_lines
from notchbook.output.typeset import fitting_size, shortened, text_width

PAGE_WIDTH = 304.8
"""mm; 12 in, so that 100 dots an inch give 1200."""

MOST_HEIGHT = 260.0
"""mm that the pieces may take in height."""

_EDGE = 8.0
_HEAD = 20.0
_NAME = 14.0
_LEAST_NAME = 8.0
_QUANTITY = 8.0
_LINE_NAME = 7.0
"""Type sizes in points."""

_LIFT = 0.5
"""mm by which the names of lines stand off them, beside the gap of the paper that shrinks."""

_LEADING = 1.22

_WIDTHS = (0.8, 1.0, 1.3, 1.7, 2.2, 2.8, 3.5)
"""Widths that are tried, as shares of the side of a square as large as all pieces."""


def picture_pdf(pieces: Sequence[CutPiece], info: PaperInfo) -> bytes:
    """The picture as a PDF of one page. OutputError ``output-no-pieces``."""
    if not pieces:
        raise OutputError("output-no-pieces", style=info.heading)
    sheet, scale = _composed(pieces)
    room = PAGE_WIDTH - 2.0 * _EDGE
    height = sheet.height * scale + _HEAD
    trim = Box(_EDGE, _EDGE, PAGE_WIDTH - _EDGE, _EDGE + height)
    made = PdfPaper(info, "Picture of all pieces, not to be printed as a pattern")
    with made.page(PAGE_WIDTH, height + 2.0 * _EDGE, trim) as pen:
        pen.write(Text(shortened(info.heading, 20.0, room, True), Point(0.0, height - 7.0), 20.0, True))
        pen.write(Text(shortened(info.issue, 11.0, room), Point(0.0, height - 13.0), 11.0))
        _draw_scale_bar(pen, Point(room, height - 13.0), scale, info)
        aside = (room - sheet.width * scale) / 2.0
        for placement in sheet.placements:
            _draw(pen, placement, Transform(a=scale, d=scale, e=aside), scale, info)
    return made.data()


def _composed(pieces: Sequence[CutPiece]) -> tuple[Sheet, float]:
    """The sheet that can be shown largest, and the scale at which it is shown."""
    side = sum(piece.bounds.width * piece.bounds.height for piece in pieces) ** 0.5
    room = PAGE_WIDTH - 2.0 * _EDGE
    sheets = [lay_out(pieces, width=side * share) for share in _WIDTHS]
    scales = [min(room / sheet.width, MOST_HEIGHT / sheet.height) for sheet in sheets]
    best = max(range(len(sheets)), key=lambda index: scales[index])
    return sheets[best], scales[best]


def _draw(pen: Pen, placement: Placement, shrink: Transform, scale: float, info: PaperInfo) -> None:
    piece, motion = placement.piece, placement.motion.then(shrink)
    pen.stroke(piece.cut_line.transformed(motion), style.PICTURE_CUT)
    for edge in piece.edges:
        if edge.width > 0.0:
            pen.stroke(edge.sew.transformed(motion), style.PICTURE_SEW)
    for dart in piece.darts:
        for leg in (dart.first_leg, dart.second_leg):
            pen.stroke(leg.transformed(motion), style.PICTURE_LINE)
    for path in (*(line.path for line in piece.lines), *([piece.fold.path] if piece.fold else ())):
        pen.stroke(path.transformed(motion), style.PICTURE_LEVEL)
    for notch in piece.notches:
        for place in notch.cut_positions:
            end = place + notch.direction * max(notch.depth, 3.0)
            pen.stroke(Path.line(motion.apply(place), motion.apply(end)), style.PICTURE_CUT)
    for hole in piece.drills:
        pen.stroke(circle(motion.apply(hole.position), 0.7), style.PICTURE_LINE)
    for mark in piece.marks:
        middle = motion.apply(mark.position)
        for arm in (Point(1.4, 0.0), Point(0.0, 1.4)):
            pen.stroke(Path.line(middle - arm, middle + arm), style.PICTURE_SEW)
    grain = piece.grain
    draw_grain(pen, GrainLine(motion.apply(grain.start), motion.apply(grain.end), grain.one_way), 3.0)
    _name(pen, piece, motion, scale)
    _name_lines(pen, piece, motion, scale, info)


def _name(pen: Pen, piece: CutPiece, motion: Transform, scale: float) -> None:
    """The name in the room of the label, with the quantities where they fit too; a name too long for its
    room is written level, over the lines."""
    box = piece.label
    center = motion.apply(box.center)
    degrees = (motion.apply(box.center + Point(1.0, 0.0).rotated(box.degrees)) - center).direction()
    length, height = box.length * scale, box.height * scale
    size = fitting_size(piece.title, _NAME, _LEAST_NAME, length, bold=True)
    is_long = text_width(piece.title, size, bold=True) > length
    if is_long:
        degrees = 0.0
    up = Point(0.0, 1.0).rotated(degrees)
    told = [f"{quantity.material}: {quantity.text}" for quantity in piece.quantities]
    step = _QUANTITY * _LEADING * MM_PER_POINT
    tall = size * _LEADING * MM_PER_POINT + step * len(told)
    if is_long or tall > height or any(text_width(words, _QUANTITY) > length for words in told):
        told, tall = [], size * _LEADING * MM_PER_POINT
    base = center + up * (tall / 2.0 - size * MM_PER_POINT)
    pen.write(Text(piece.title, base, size, True, degrees, "center", halo=is_long))
    for index, words in enumerate(told, start=1):
        pen.write(Text(words, base - up * (step * index), _QUANTITY, degrees=degrees, align="center"))


def _name_lines(pen: Pen, piece: CutPiece, motion: Transform, scale: float, info: PaperInfo) -> None:
    """The names of levels, sides and points, as on the paper, in a type that is read on the screen."""
    size = _LINE_NAME / scale
    free = FreePlaces(piece, label_size(piece, info))
    grain = piece.grain.degrees
    for mark in (mark for mark in piece.marks if mark.kind != "drill"):
        said = line_words(mark.name)
        spot, is_free = free.around(mark.position, said, size, grain)
        _write_turned(pen, said, spot, motion, halo=not is_free)
    words = named_lines(piece)
    for line in piece.lines:
        if line.name in words:
            spot, standing = free.along(line.path, words[line.name], size, grain)
            if standing != "on words":
                _write_turned(pen, words[line.name], spot, motion, halo=standing != "free")
    for named in named_edges(piece):
        beside = free.inside(named.path, named.words, size, grain)
        if beside is not None:
            _write_turned(pen, named.words, beside, motion, halo=False, lift=0.0)


def _write_turned(
    pen: Pen, words: str, spot: Spot, motion: Transform, *, halo: bool, lift: float = _LIFT
) -> None:
    """Words at a spot of the piece's frame, ``lift`` mm above it, as gaps there shrink with the piece."""
    middle = motion.apply(spot.base)
    degrees = (motion.apply(spot.base + Point(1.0, 0.0).rotated(spot.degrees)) - middle).direction()
    raised = middle + Point(0.0, lift).rotated(degrees)
    pen.write(Text(words, raised, _LINE_NAME, degrees=degrees, align="center", halo=halo))


def _draw_scale_bar(pen: Pen, right: Point, scale: float, info: PaperInfo) -> None:
    """A bar of 10 cm (4 in for those who work in inches) at the picture's scale; ``right`` is its end."""
    length, words = (101.6, "4 in") if info.lengths.unit == "in" else (100.0, "10 cm")
    left = right - Point(length * scale, 0.0)
    pen.stroke(Path.line(left, right), style.PICTURE_CUT)
    for end in (left, right):
        pen.stroke(Path.line(end - Point(0.0, 1.2), end + Point(0.0, 1.2)), style.PICTURE_CUT)
    pen.write(Text(words, left.lerp(right, 0.5) + Point(0.0, 1.8), _QUANTITY, align="center"))
