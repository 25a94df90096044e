"""Turn the sleeve in the armhole: every meeting point moves along the cap by the same way.

The pitch of a sleeve is how far the highest point of its crown lies behind the shoulder seam, as an angle:
360 degrees times that way along the sewn armhole over the whole armhole. A turn of so many degrees raises
the pitch by as many: the points of the cap that meet shoulder seam, notches and side seam move toward the
front of the cap, so that crown and underarm of the sleeve come to lie farther round and the hem swings
forward. Nothing is redrawn and no length changes: only what meets what.
"""

from dataclasses import dataclass, replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
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
from notchbook.pattern.sewn import place_distance
from notchbook.recipe import Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word

_NEAREST = 15.0
"""mm that a balance notch stays off the underarm of the cap (own judgment: a hand finds it there)."""

Which = Literal["front", "back"]
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


def run(pattern: Pattern, context: StepContext, parameters: TurnSleeveParameters) -> Change:
    """Move the shoulder point of the cap, part the cap under the arm, and name anew what meets what."""
    slug = parameters.sleeve
    name = piece_name(slug, "sleeve")
    if name not in pattern.pieces:
        raise StepRefused("turn-sleeve-no-sleeve", sleeve=slug)
    caps: tuple[Which, Which] = ("front", "back")
    if any(len(require(pattern, _cap(name, which))) > 1 for which in caps):
        raise StepRefused("turn-sleeve-parted", sleeve=slug)
    girth = sum(
        run_length(pattern, pattern.seams[part_name(slug, f"{which}_armhole")].first) for which in caps
    )
    way = girth * parameters.degrees / 360.0
    _require_room(pattern, slug, way)
    note = _pitch_note(pattern.pieces[name], girth, way)
    if way == 0.0:
        return Change(pattern, notes=(note,))
    halves = _Halves("back", "front") if way > 0.0 else _Halves("front", "back")
    cap = _cap(name, halves.long)
    side = part_name(context.slug, "side_point")
    turned = pattern.with_pieces(_turned(pattern.pieces[name], halves, side, abs(way)))
    turned = _sewn_anew(turned, slug, halves, side)
    turned = turned.with_notches(*_moved_notches(pattern, slug, way))
    return Change(turned, splits={cap: _parts(cap, halves.long)}, notes=(note,))


def _cap(name: str, which: str) -> str:
    return part_name(name, f"cap_{which}")


def _parts(cap: str, which: Which) -> tuple[str, str]:
    """The parts of the parted half in the direction of the outline: the front runs up, the back down."""
    above, below = part_name(cap, "above"), part_name(cap, "below")
    return (below, above) if which == "front" else (above, below)


def _turned(piece: Piece, halves: _Halves, side: str, way: float) -> Piece:
    """The cap with its shoulder point moved, and the grown half parted where it meets the side seam."""
    name = piece.name
    top = part_name(name, "cap_top")
    front, back = piece.edge(_cap(name, "front")), piece.edge(_cap(name, "back"))
    whole = front.path.joined(back.path)
    if halves.long == "back":
        first, rest = whole.split_at(front.length - way)
        above, below = rest.split_at(rest.length - way)
        parts = _parts(back.name, "back")
        edges = (
            Edge(front.name, first, front.start, top),
            Edge(parts[0], above, top, side),
            Edge(parts[1], below, side, back.end),
        )
    else:
        rest, last = whole.split_at(front.length + way)
        below, above = rest.split_at(way)
        parts = _parts(front.name, "front")
        edges = (
            Edge(parts[0], below, front.start, side),
            Edge(parts[1], above, side, top),
            Edge(back.name, last, top, back.end),
        )
    index = piece.edge_index(front.name)
    return replace(piece, outline=(*piece.outline[:index], *edges, *piece.outline[index + 2 :]))


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
    whole = pattern.edges[cap].length
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


def _pitch_note(piece: Piece, girth: float, way: float) -> Finding:
    """The pitch that the sleeve has when it is turned by a way along the armhole, degrees."""
    crown = part_name(piece.name, "crown")
    front, back = piece.edge(_cap(piece.name, "front")), piece.edge(_cap(piece.name, "back"))
    highest = front.path.joined(back.path).nearest(piece.points[crown]).distance_along
    behind = highest - (front.length - way)
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
