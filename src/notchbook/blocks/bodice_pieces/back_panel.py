"""The back as a panel: its darts with their words, the levels on it."""

from notchbook.blocks.bodice_pieces.panel import Level, Opening, PanelShape, Run
from notchbook.blocks.bodice_pieces.waist_darts import waist_words
from notchbook.blocks.upper.shapes import BackHalf, OpenDart
from notchbook.geometry import Line, Path, Point

SHOULDER_DART = "shoulder_dart"


def back_panel(back: BackHalf, bust_side: Point) -> PanelShape:
    """The back before names. ``bust_side`` is where the bust line meets the side seam."""
    waist = tuple(
        _opening(word, dart)
        for word, dart in zip(waist_words(len(back.waist_darts)), back.waist_darts, strict=True)
    )
    center = Path.of(Line(back.neck.start, Point(0.0, back.waist[0].start.y)))
    return PanelShape(
        "back",
        (
            Run("waist", back.waist, waist),
            Run("side_seam", (back.side.reversed(),)),
            Run("armhole", (back.armhole.reversed(),)),
            _shoulder(back),
            Run("neck", (back.neck.reversed(),)),
            Run("center", (center,)),
        ),
        (_level("bust_line", bust_side), _level("across_back_line", back.across)),
    )


def _shoulder(back: BackHalf) -> Run:
    """The shoulder from its point inward: the other way round than it is drawn."""
    parts = tuple(part.reversed() for part in reversed(back.shoulder))
    dart = back.shoulder_dart
    if dart is None:
        return Run("shoulder", parts)
    return Run("shoulder", parts, (Opening(SHOULDER_DART, dart.second, dart.point, dart.first),))


def _opening(word: str, dart: OpenDart) -> Opening:
    return Opening(word, dart.first, dart.point, dart.second)


def _level(word: str, end: Point) -> Level:
    return Level(word, (Path.line(Point(0.0, end.y), end),))
