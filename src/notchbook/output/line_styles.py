"""The lines of the papers. Weights: cut 0.7 to 1.0 pt, sew dashed 0.5 pt (common practice)."""

from notchbook.output.pen import LineStyle

CUT = LineStyle(0.9)
SEW = LineStyle(0.5, (4.0, 2.0))
DART_LEG = LineStyle(0.5, (2.0, 1.5))
DART_FOLD = LineStyle(0.4, (0.5, 1.5))
LEVEL = LineStyle(0.4, (8.0, 1.5, 1.0, 1.5))
FOLD = LineStyle(0.5, (7.0, 1.8))
PLACEMENT = LineStyle(0.5, (1.2, 2.4))
BUTTONHOLE = LineStyle(0.9)
STITCHES = LineStyle(0.5, (2.6, 1.1))
ROLL = LineStyle(0.5, (10.0, 1.5, 2.5, 1.5))
SLASH = LineStyle(0.7)
CENTER = LineStyle(0.4, (12.0, 1.5, 1.0, 1.5, 1.0, 1.5))
FOLD_BRACKET = LineStyle(0.7)
GRAIN = LineStyle(0.7)
NOTCH = LineStyle(1.1)
NOTCH_MARK = LineStyle(0.5, (1.0, 0.8))
DRILL = LineStyle(0.4)
MARK = LineStyle(0.4)
FRAME = LineStyle(0.3, (), 0.35)
OVERLAP = LineStyle(0.3, (0.4, 1.2), 0.35)
MATCH = LineStyle(0.4)
SQUARE = LineStyle(0.5)
RULE = LineStyle(0.9)
HAIR = LineStyle(0.3, (), 0.6)
PICTURE_CUT = LineStyle(1.2)
PICTURE_SEW = LineStyle(0.6, (1.6, 0.9))
PICTURE_LEVEL = LineStyle(0.5, (3.0, 0.8, 0.5, 0.8), 0.35)
PICTURE_LINE = LineStyle(0.5, (), 0.35)
"""In the picture for the screen, where thin lines fade."""
SMALL_CUT = LineStyle(0.6)
"""The cut line in a small picture."""
SMALL_LINE = LineStyle(0.25, (), 0.35)
"""Darts and grain in a small picture."""
