"""What can be made to measure: a length, a whole round, the ease of a seam, a finished girth, a level."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final, Literal

from notchbook.errors import NameLost
from notchbook.pattern import Pattern, require, sewn_length, spoken, walk_seam
from notchbook.pattern.expectation import Reach
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.piece import Piece
from notchbook.pattern.promised_length import distance_apart, promised_length, sewn_shares
from notchbook.pattern.walking import Walk
from notchbook.pattern.width_at_level import width_at_level
from notchbook.recipe.replay import Replay

QuantityKind = Literal["length", "around", "ease", "misfit", "finished", "level", "distance"]
"""``length``: edges as sewn, as drawn; ``around``: the same in the whole garment; ``ease``: how much longer
the second runs of seams are than the first; ``misfit``: the same beyond the declared ease; ``finished``: a
girth or length that a draft promised, in the garment; ``level``: the whole garment along level lines, or
below them; ``distance``: from one point of a piece to another."""

_TIMES: Final[Mapping[str, int]] = {"fold": 2, "pair": 2, "single": 1}
"""How often what is drawn on a piece stands in the garment."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """Something that is measured on a pattern, by full names.

    ``below`` is how far under the level lines is measured, mm; ``reach`` how a distance is taken.
    """

    kind: QuantityKind
    names: tuple[str, ...]
    reach: Reach = "straight"
    below: float = 0.0

    @property
    def text(self) -> str:
        """As it is kept; reading it again gives an equal quantity."""
        if self.kind == "distance":
            suffix = "" if self.reach == "straight" else f" {self.reach}"
            return f"distance {self.names[0]} to {self.names[1]}{suffix}"
        suffix = f" below {self.below:g} mm" if self.below else ""
        return f"{self.kind} {', '.join(self.names)}{suffix}"


def measured(run: Replay, quantity: Quantity) -> float:
    """What the quantity measures on the last good pattern of a run, mm.

    NameLost when one of its names is gone; the reason is that of the name.
    """
    return _MEASURED[quantity.kind](run, quantity)


def said_quantity(quantity: Quantity) -> str:
    """The quantity in words, without its amount: ``hem (front, back), all round``."""
    kind, names = quantity.kind, quantity.names
    if kind == "finished":
        return f"finished {last_word(names[0]).replace('_', ' ')}"
    if kind in ("ease", "misfit"):
        return f"{kind} of {_together(names)}"
    if kind == "distance":
        way = {"straight": "", "down": ", straight down", "across": ", straight across"}[quantity.reach]
        return f"{spoken(names[0])} to {spoken(names[1])}{way}"
    if kind == "level":
        under = f", {quantity.below:g} mm below" if quantity.below else ""
        return f"girth at the {_together(names)}{under}"
    return f"{_together(names)}, all round" if kind == "around" else f"length of {_together(names)}"


def _together(names: tuple[str, ...]) -> str:
    """What several names share is said once: ``hem (front, back)``."""
    pairs = [spoken(name).partition(", ") for name in names]
    owners, words = dict.fromkeys(pair[0] for pair in pairs), dict.fromkeys(pair[2] for pair in pairs)
    if len(owners) < len(names) and len(words) == 1:
        owners = dict.fromkeys(
            f"{instance_of(name)} {pair[0]}" for name, pair in zip(names, pairs, strict=True)
        )
    if len(names) > 1 and len(words) == 1:
        return f"{next(iter(words))} ({', '.join(owners)})"
    if len(names) > 1 and len(owners) == 1:
        return f"{' and '.join(words)} ({next(iter(owners))})"
    return " and ".join(map(spoken, names))


def _length(run: Replay, quantity: Quantity) -> float:
    return sum(sewn_length(run.pattern, name) for name in quantity.names)


def _around(run: Replay, quantity: Quantity) -> float:
    pattern = run.pattern
    members = [member for name in quantity.names for member in require(pattern, name)]
    return sum(_TIMES[pattern.piece_of(member).cut] * sewn_length(pattern, member) for member in members)


def _ease(run: Replay, quantity: Quantity) -> float:
    return sum(walk.second - walk.first for walk in _walks(run.pattern, quantity))


def _misfit(run: Replay, quantity: Quantity) -> float:
    return sum(walk.misfit for walk in _walks(run.pattern, quantity))


def _walks(pattern: Pattern, quantity: Quantity) -> list[Walk]:
    seams = [member for name in quantity.names for member in require(pattern, name, "seam")]
    return [walk_seam(pattern, pattern.seams[seam]) for seam in seams]


def _finished(run: Replay, quantity: Quantity) -> float:
    name = quantity.names[0]
    promise = next((one for one in run.expectations if one.name == name), None)
    found = None if promise is None else promised_length(run.pattern, promise, sewn_shares(run.pattern))
    if found is None:
        raise _lost(name, "promised girth")
    return found


def _level(run: Replay, quantity: Quantity) -> float:
    total = 0.0
    for name in quantity.names:
        piece = _carrier(run.pattern, name, "line")
        total += _TIMES[piece.cut] * width_at_level(piece, piece.line(name), quantity.below)
    return total


def _distance(run: Replay, quantity: Quantity) -> float:
    first, second = quantity.names
    piece = _carrier(run.pattern, first, "point")
    if second not in piece.points:
        raise _lost(second, f"point of the {spoken(piece.name)}")
    return distance_apart(piece.points[first], piece.points[second], quantity.reach)


def _carrier(pattern: Pattern, name: str, wanted: str) -> Piece:
    kind = pattern.index.get(name)
    if kind != wanted and not (wanted == "point" and kind == "mark"):
        raise _lost(name, wanted)
    return pattern.piece_of(name)


def _lost(name: str, wanted: str) -> NameLost:
    return NameLost(
        "name-lost",
        name=name,
        candidates=(),
        by="no step",
        reason=f"this pattern has no {wanted} of this name",
        wanted=wanted,
    )


_MEASURED: Final[Mapping[QuantityKind, Callable[[Replay, Quantity], float]]] = {
    "length": _length,
    "around": _around,
    "ease": _ease,
    "misfit": _misfit,
    "finished": _finished,
    "level": _level,
    "distance": _distance,
}
