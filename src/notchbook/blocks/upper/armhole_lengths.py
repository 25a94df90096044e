"""Front and back armhole kept together in length, where the upper bust would part them.

The upper bust is a weak witness: where it makes the bust dart so narrow that the front armhole comes out
longer than the back by more than it hardly ever is, the two armholes speak against it together with the
lengths. It then makes the dart narrower by only so much as keeps them together.
"""

from notchbook.blocks._least import nearest_serving
from notchbook.blocks.upper.frames import Frames
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.leaning import Armholes, draw_armholes, lean_forward, leans_back
from notchbook.blocks.upper.levers import Pulled, levers
from notchbook.blocks.upper.necks import Slopes
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.refusals import require_arm_room, require_dart_length, require_underarm
from notchbook.blocks.upper.side_place import Place, settle_side
from notchbook.errors import DraftRefused

Drawn = tuple[Frames, Pulled, Armholes]

_HALVINGS = 4
"""Rounds in which the most is sought: to a quarter of a degree."""


def draw_at(given: BodiceGiven, slopes: Slopes, place: Place) -> Drawn:
    """Frames, levers and armholes from this place of the side seam, which is moved to where it is right.

    DraftRefused with the measures that cannot be had together.
    """
    frames, pulled = settle_side(given, slopes, place)
    require_arm_room(given, frames)
    require_underarm(frames)
    require_dart_length(frames)
    armholes = draw_armholes(frames, pulled)
    if leans_back(armholes):
        return lean_forward(given, slopes, place, frames, pulled)
    return frames, pulled, armholes


def are_apart(armholes: Armholes) -> bool:
    """Whether the back armhole is shorter beside the front than it hardly ever is."""
    front, back = armholes
    return back.length - front.length < proportion("armhole.least_back_over_front")


def bring_together(given: BodiceGiven, slopes: Slopes, drawn: Drawn) -> Drawn:
    """The draft with the bust dart made narrower by the upper bust by only so much as keeps the armholes
    together; as it was where that does not do, or would bring another lever to its limit."""
    by_upper = -drawn[0].turned.by_upper
    found = _served(given, slopes, drawn, 0.0) if by_upper > 0.0 else None
    if found is None:
        return drawn
    most = nearest_serving(lambda narrowed: _served(given, slopes, drawn, narrowed), by_upper, 0.0, _HALVINGS)
    return most or found


def _served(given: BodiceGiven, slopes: Slopes, before: Drawn, most_narrowed: float) -> Drawn | None:
    place = Place(before[0].back_width, before[1].extension, most_narrowed=most_narrowed, frames=before[0])
    try:
        drawn = draw_at(given, slopes, place)
    except DraftRefused:
        return None
    if are_apart(drawn[2]) or not _at_limit(given, drawn) <= _at_limit(given, before):
        return None
    return drawn


def _at_limit(given: BodiceGiven, drawn: Drawn) -> set[str]:
    return {lever.name for lever in levers(given, drawn[0], drawn[1]) if lever.at_limit}
