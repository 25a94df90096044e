"""The size that goes over the body, as it is said beside the nearest."""

from notchbook.body.charts.comparing.goes_over import GOES_OVER, GoesOver
from notchbook.body.charts.comparing.nearest_size import NearestSize
from notchbook.body.quantity_words import said_key
from notchbook.units import LengthStyle


def goes_over_words(found: NearestSize, style: LengthStyle) -> str:
    """``goes over the hip: size 92 (nearest by all is 84, 4.4 cm too small at the hip)``."""
    girth = said_key(GOES_OVER[found.garment])
    place = girth.removesuffix(" girth")
    return f"goes over the {place}: {_size_words(found, girth, place, style)}"


def _size_words(found: NearestSize, girth: str, place: str, style: LengthStyle) -> str:
    over = found.goes_over
    if over is None:
        return f"not known, the {girth} is missing"
    if not over.size:
        return f"no size; the last, {over.last}, is {style.text(over.short_by)} too small"
    if over.size == found.size:
        return f"size {over.size}, the nearest too"
    return f"size {over.size} (nearest by all is {found.size}{_off_words(over, place, style)})"


def _off_words(over: GoesOver, place: str, style: LengthStyle) -> str:
    if over.off is None:
        return ""
    way = "too small" if over.off > 0 else "larger"
    return f", {style.text(abs(over.off))} {way} at the {place}"
