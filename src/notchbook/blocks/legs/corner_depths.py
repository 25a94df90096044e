"""How deep the crotch curve lies in its corner: what is wanted, and what is usual for a body of this hip."""

from notchbook.blocks.legs.proportions import proportion


def wanted_depth(panel: str, extension: float, hip: float) -> float:
    """The depth that the ``front`` or ``back`` curve aims at, mm, for an extension and a hip girth with its
    ease."""
    least, most = _limits(panel, hip)
    return min(most, max(least, proportion(f"curve.share_{panel}") * extension))


def usual_depths(panel: str, hip: float) -> tuple[float, float]:
    """From least to most, mm: what a corner depth may be on such a body. Adults 30 to 38 in front and 42 to
    52 behind, plus sizes at most 45 and 58, children less in proportion (a patternmaker's review)."""
    least, most = _limits(panel, hip)
    room = proportion("curve.room")
    return least - room, most + room


def _limits(panel: str, hip: float) -> tuple[float, float]:
    least, most, plus = (proportion(f"curve.{word}_{panel}") for word in ("least", "most", "plus"))
    most += (plus - most) * _share_of_plus(hip)
    small = share_of_adult(hip)
    return least * small, most * small


def share_of_adult(hip: float) -> float:
    """What a small body's corners have of an adult's; ``hip`` is the girth with its ease, mm."""
    return min(1.0, hip / proportion("curve.adult_hip"))


def _share_of_plus(hip: float) -> float:
    """How far the corners have grown to those of the largest bodies: 0 up to the hip (with its ease) where
    that begins, then up to 1."""
    start, full = proportion("curve.plus_hip"), proportion("curve.plus_full")
    return min(1.0, max(0.0, (hip - start) / (full - start)))
