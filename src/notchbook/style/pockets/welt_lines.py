"""What is drawn for a welt pocket on its piece: the box of stitches, the slit, drill holes at its ends."""

from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern import InternalLine, Mark, part_name
from notchbook.style.pockets.figures import DRILL_INSIDE, SLIT_CLIP
from notchbook.style.pockets.placing import Placed


@dataclass(frozen=True, slots=True)
class WeltBox:
    """The opening of a welt pocket: ``length`` along it and ``height`` across it, mm; the slit runs through
    its middle, from the place at which it was placed."""

    placed: Placed
    length: float
    height: float

    def at(self, along: float, across: float) -> Point:
        """The place so far along the opening, and so far below the slit."""
        return self.placed.at(along, across)

    @property
    def outline(self) -> Path:
        """The box as a closed line."""
        half = self.height / 2.0
        corners = ((0.0, -half), (0.0, half), (self.length, half), (self.length, -half))
        return Path.polyline([self.at(*corner) for corner in corners], closed=True)


BOX, SLIT = "welt_box", "slit"


def welt_lines(box: WeltBox, owner: str) -> tuple[InternalLine, ...]:
    """The long lines of the box, its ends, the slit, and how it parts into the corners."""
    half, length = box.height / 2.0, box.length
    clip = min(SLIT_CLIP.value, length / 4.0)
    stitched = {
        "upper": ((0.0, -half), (length, -half)),
        "lower": ((0.0, half), (length, half)),
        "near": ((0.0, -half), (0.0, half)),
        "far": ((length, -half), (length, half)),
    }
    cut = {
        (): ((clip, 0.0), (length - clip, 0.0)),
        ("near",): ((0.0, -half), (clip, 0.0), (0.0, half)),
        ("far",): ((length, -half), (length - clip, 0.0), (length, half)),
    }
    lines = [
        InternalLine(part_name(owner, BOX, word), _line(box, *ends), "stitch_line")
        for word, ends in stitched.items()
    ]
    lines += [
        InternalLine(part_name(owner, SLIT, *words), _line(box, *places), "cut_line")
        for words, places in cut.items()
    ]
    return tuple(lines)


def welt_marks(box: WeltBox, owner: str) -> tuple[Mark, ...]:
    """Drill holes at both ends of the slit, inside the box."""
    places = {"near": DRILL_INSIDE.value, "far": box.length - DRILL_INSIDE.value}
    return tuple(
        Mark(part_name(owner, f"{word}_drill"), box.at(along, 0.0), "drill") for word, along in places.items()
    )


def _line(box: WeltBox, *places: tuple[float, float]) -> Path:
    return Path.polyline([box.at(*place) for place in places])
