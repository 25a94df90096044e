"""Turn the sleeve in the armhole: every meeting point moves along the cap by the same way.

The pitch of a sleeve is how far the highest point of its crown lies behind the shoulder seam, as an angle:
360 degrees times that way along the sewn armhole over the whole armhole. A turn of so many degrees raises
the pitch by as many: the points of the cap that meet shoulder seam, notches and side seam move toward the
front of the cap, so that crown and underarm of the sleeve come to lie farther round and the hem swings
forward. Nothing is redrawn and no length changes: only what meets what. A second turn is added to the first.
"""

from dataclasses import dataclass, replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    Edge,
    EdgeUse,
    Finding,
    Measured,
    Notch,
    Pattern,
    Piece,
    Severity,
    part_name,
    piece_name,
    require,
    run_length,
    worded,
)
from notchbook.pattern.sewn import place_distance, sewn_length
from notchbook.recipe import Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.units import TOLERANCES

_NEAREST = 15.0
"""mm that a balance notch stays off the underarm of the cap (own judgment: a hand finds it there)."""

Which = Literal["front", "back"]

_CAPS: tuple[Which, Which] = ("front", "back")
Degrees = Annotated[float, Field(ge=-15.0, le=15.0)]


class TurnSleeveParameters(StepParameters):
    """The ``sleeve`` and by how many ``degrees`` it is turned; the whole armhole is 360."""

    degrees: Degrees
    """Forward, so that the hem swings to the front; with a minus backward."""
    sleeve: Word = "sleeve"
    """The sleeve that is turned."""


@dataclass(frozen=True, slots=True)
class _Halves:
    """The half of the cap that grows past the shoulder seam and is parted under the arm, and the other."""

    long: Which
    short: Which


_FORWARD, _BACKWARD = _Halves("back", "front"), _Halves("front", "back")


@dataclass(frozen=True, slots=True)
class _Cap:
    """The cap of a sleeve from the front underarm to the back one: its edges in the order of the outline, the
    line, how long its front half was before any turn, how far it is turned already (mm along the armhole,
    forward above zero), and the point where it then meets the side seam."""

    edges: tuple[Edge, ...]
    line: Path
    front: float
    turned: float
    side: str | None


def run(pattern: Pattern, context: StepContext, parameters: TurnSleeveParameters) -> Change:
    """Move the shoulder point of the cap, part the cap under the arm, and name anew what meets what.

    StepRefused ``turn-sleeve-no-sleeve``; ``turn-sleeve-parted`` for a cap that was cut, or that would be
    turned back past where it was drafted; ``turn-sleeve-no-room``.
    """
    slug = parameters.sleeve
    name = piece_name(slug, "sleeve")
    if name not in pattern.pieces:
        raise StepRefused("turn-sleeve-no-sleeve", sleeve=slug)
    cap = _cap_of(pattern, slug)
    girth = sum(run_length(pattern, pattern.seams[part_name(slug, f"{one}_armhole")].first) for one in _CAPS)
    more = girth * parameters.degrees / 360.0
    way = cap.turned + more
    if cap.side is not None and (way * cap.turned < 0.0 or abs(way) < TOLERANCES.closure):
        raise StepRefused("turn-sleeve-parted", sleeve=slug)
    _require_room(pattern, slug, more)
    note = _pitch_note(pattern.pieces[name], cap, girth, way)
    if more == 0.0:
        return Change(pattern, notes=(note,))
    halves = _FORWARD if way > 0.0 else _BACKWARD
    side = cap.side or part_name(context.slug, "side_point")
    turned = pattern.with_pieces(_turned(pattern.pieces[name], cap, halves, side, abs(way)))
    turned = _sewn_anew(turned, slug, halves, side)
    turned = turned.with_notches(*_moved_notches(pattern, slug, more))
    long = _cap(name, halves.long)
    splits = {} if cap.side else {long: _parts(long, halves.long)}
    return Change(turned, splits=splits, notes=(note,))


def _cap(name: str, which: str) -> str:
    return part_name(name, f"cap_{which}")


def _parts(cap: str, which: Which) -> tuple[str, str]:
    """The parts of the parted half in the direction of the outline: the front runs up, the back down."""
    above, below = part_name(cap, "above"), part_name(cap, "below")
    return (below, above) if which == "front" else (above, below)


def _cap_of(pattern: Pattern, slug: str) -> _Cap:
    """The cap as it is drawn, or as an earlier turn left it."""
    name = piece_name(slug, "sleeve")
    members = {which: require(pattern, _cap(name, which)) for which in _CAPS}
    edges = tuple(pattern.edges[member] for which in _CAPS for member in members[which])
    line = Path(tuple(segment for edge in edges for segment in edge.path.segments))
    front = sum(pattern.edges[member].length for member in members["front"])
    turned, side = 0.0, None
    for halves, sign in ((_FORWARD, 1.0), (_BACKWARD, -1.0)):
        found = members[halves.long]
        if len(found) == 1:
            continue
        if found != _parts(_cap(name, halves.long), halves.long) or len(members[halves.short]) > 1:
            raise StepRefused("turn-sleeve-parted", sleeve=slug)
        turned = sign * pattern.edges[part_name(_cap(name, halves.long), "below")].length
        side = pattern.edges[found[0]].end
    return _Cap(edges, line, front + turned, turned, side)


def _turned(piece: Piece, cap: _Cap, halves: _Halves, side: str, way: float) -> Piece:
    """The cap with its shoulder point moved, and the grown half parted where it meets the side seam."""
    top = part_name(piece.name, "cap_top")
    first, last = cap.edges[0].start, cap.edges[-1].end
    long = _cap(piece.name, halves.long)
    parts, short = _parts(long, halves.long), _cap(piece.name, halves.short)
    if halves.long == "back":
        front, rest = cap.line.split_at(cap.front - way)
        above, below = rest.split_at(rest.length - way)
        edges = (
            Edge(short, front, first, top),
            Edge(parts[0], above, top, side),
            Edge(parts[1], below, side, last),
        )
    else:
        rest, back = cap.line.split_at(cap.front + way)
        below, above = rest.split_at(way)
        edges = (
            Edge(parts[0], below, first, side),
            Edge(parts[1], above, side, top),
            Edge(short, back, top, last),
        )
    index = piece.edge_index(cap.edges[0].name)
    return replace(piece, outline=(*piece.outline[:index], *edges, *piece.outline[index + len(cap.edges) :]))


def _sewn_anew(pattern: Pattern, slug: str, halves: _Halves, side: str) -> Pattern:
    """The two armhole seams: one now begins on the other half of the cap, under the arm."""
    name = piece_name(slug, "sleeve")
    cap = _cap(name, halves.long)
    below, above = EdgeUse(part_name(cap, "below"), side), EdgeUse(part_name(cap, "above"), side)
    short = EdgeUse(_cap(name, halves.short), part_name(name, f"underarm_{halves.short}"))
    seams = {which: pattern.seams[part_name(slug, f"{which}_armhole")] for which in ("front", "back")}
    return pattern.with_seams(
        replace(seams[halves.short], second=(below, short)),
        replace(seams[halves.long], second=(above,)),
    )


def _on_cap(pattern: Pattern, slug: str, which: Which) -> list[tuple[Notch, float]]:
    """The notches on half the cap that serve its armhole seam, each with its way from the underarm, mm."""
    name, seam = piece_name(slug, "sleeve"), part_name(slug, f"{which}_armhole")
    cap, underarm = _cap(name, which), part_name(name, f"underarm_{which}")
    found = [notch for notch in pattern.notches.values() if notch.seam == seam and notch.place.edge == cap]
    whole = sewn_length(pattern, cap)
    return [
        (notch, distance if notch.place.from_point == underarm else whole - distance)
        for notch in found
        for distance in (place_distance(pattern, notch.place),)
    ]


def _moved_notches(pattern: Pattern, slug: str, way: float) -> list[Notch]:
    name = piece_name(slug, "sleeve")
    halves: tuple[tuple[Which, float], ...] = (("front", -way), ("back", way))
    return [
        replace(
            notch,
            place=replace(
                notch.place,
                from_point=part_name(name, f"underarm_{which}"),
                amount=distance + moved,
                measure="distance",
                notch=None,
            ),
        )
        for which, moved in halves
        for notch, distance in _on_cap(pattern, slug, which)
    ]


def _require_room(pattern: Pattern, slug: str, way: float) -> None:
    """Refuse a turn that would carry a notch past the underarm of the cap."""
    which: Which = "front" if way > 0.0 else "back"
    room = min((distance for _, distance in _on_cap(pattern, slug, which)), default=0.0) - _NEAREST
    if abs(way) > room:
        raise StepRefused("turn-sleeve-no-room", way=abs(way), room=max(room, 0.0), which=which)


def _pitch_note(piece: Piece, cap: _Cap, girth: float, way: float) -> Finding:
    """The pitch that the sleeve has when it is turned by a way along the armhole, degrees."""
    crown = part_name(piece.name, "crown")
    highest = cap.line.nearest(piece.points[crown]).distance_along
    behind = highest - (cap.front - way)
    pitch = 360.0 * behind / girth
    return worded(
        "turn-sleeve",
        "sleeve-turned",
        Severity.NOTE,
        Measured(pitch, None, "deg"),
        piece=piece.name,
        where=crown,
        pitch=pitch,
        behind=behind,
    )


STEP = StepDefinition(
    operation="turn_sleeve",
    version=1,
    kind="style",
    title="Turn the sleeve in the armhole",
    sentence="{sleeve} by {degrees} degrees forward",
    parameters=TurnSleeveParameters,
    run=run,
)
