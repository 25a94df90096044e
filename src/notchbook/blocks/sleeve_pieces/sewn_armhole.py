"""The armhole as the finished bodice has it: read from its pieces, with darts closed."""

from dataclasses import dataclass

from notchbook.blocks.set_in.given import ArmholeGiven
from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Lost, Notch, Pattern, closed_motions, closed_path, part_name, require, resolve
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import place_distance, sewn_length

_DOWN = Point(0.0, -1.0)
_ORIGIN = Point(0.0, 0.0)

BALANCE = "balance_notch"
"""The last word of the notch below which nothing is eased."""


@dataclass(frozen=True, slots=True)
class SewnArmhole:
    """The armhole, the pieces that carry it and the balance notches that stand on it in the pattern."""

    given: ArmholeGiven
    front_piece: str
    back_piece: str
    front_notch: Notch
    back_notch: Notch


def sewn_armhole(pattern: Pattern, bodice: str) -> SewnArmhole:
    """The armhole of a bodice, front and back with their side seams laid together.

    StepRefused ``sleeve-no-bodice`` where the pattern has no such bodice, ``sleeve-no-balance-notch``;
    NameLost where armhole or underarm are gone.
    """
    front, front_notch = _half(pattern, bodice, "front")
    back, back_notch = _half(pattern, bodice, "back")
    given = ArmholeGiven(front, back, *(_along(pattern, notch) for notch in (front_notch, back_notch)))
    return SewnArmhole(
        given,
        bodice_piece(pattern, bodice, "front"),
        bodice_piece(pattern, bodice, "back"),
        front_notch,
        back_notch,
    )


def bodice_piece(pattern: Pattern, bodice: str, which: str) -> str:
    """The piece of a block that carries the front or the back armhole: ``front``, or ``bodice_front`` of a
    dress with a waist seam.

    StepRefused ``sleeve-no-bodice`` where the block has none.
    """
    for name in pattern.pieces:
        instance, _, word = name.partition(".")
        is_panel = word == which or word.endswith(f"_{which}")
        if (
            instance == bodice
            and is_panel
            and not isinstance(resolve(pattern, part_name(name, "armhole")), Lost)
        ):
            return name
    blocks = sorted({piece.split(".", 1)[0] for piece in pattern.pieces})
    raise StepRefused("sleeve-no-bodice", bodice=bodice, there=blocks or ["nothing"])


def _half(pattern: Pattern, bodice: str, which: str) -> tuple[Path, Notch]:
    name = bodice_piece(pattern, bodice, which)
    armhole, underarm = part_name(name, "armhole"), part_name(name, "underarm")
    members = require(pattern, armhole)
    piece = pattern.piece_of(members[0])
    runs_out = pattern.edges[members[0]].start == underarm
    last = members[0] if runs_out else members[-1]
    closed = closed_path(pattern, armhole)
    motion = closed_motions(piece, members[0], members[-1])[last]
    path = closed if runs_out else closed.reversed()
    index = piece.edge_index(last)
    seam = piece.outline[index - 1 if runs_out else (index + 1) % len(piece.outline)].path
    way = -seam.tangent_at(seam.length) if runs_out else seam.tangent_at(0.0, "after")
    turned = motion.apply(way) - motion.apply(_ORIGIN)
    laid = Transform.carrying(path.start, path.start + turned, _ORIGIN, _DOWN)
    return path.transformed(laid), _notch(pattern, armhole, which)


def _notch(pattern: Pattern, armhole: str, which: str) -> Notch:
    for notch in pattern.notches.values():
        if last_word(notch.name) == BALANCE and notch.place.edge == armhole:
            return notch
    raise StepRefused("sleeve-no-balance-notch", which=which)


def _along(pattern: Pattern, notch: Notch) -> float:
    """How far a balance notch lies from the underarm, mm."""
    distance = place_distance(pattern, notch.place)
    if last_word(notch.place.from_point) == "underarm":
        return distance
    return sewn_length(pattern, notch.place.edge) - distance
