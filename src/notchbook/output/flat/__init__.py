"""The flat of a garment: front and back as a line drawing, from its pieces joined up along their seams.

It is a picture to know the style by, not a measured drawing: darts stay open and are drawn as one line,
gathers hang straight, a sleeve is laid beside the armhole.
"""

from notchbook.output.flat.draw import draw_flat
from notchbook.output.flat.garment import FlatView, garment_flat
from notchbook.output.flat.shapes import FlatShape

__all__ = ["FlatShape", "FlatView", "draw_flat", "garment_flat"]
