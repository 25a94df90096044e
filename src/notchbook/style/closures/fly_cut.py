"""The opening of a fly cut into the front seam of both of the wearer's sides."""

from collections.abc import Mapping
from dataclasses import dataclass

from notchbook.errors import NameLost, StepRefused
from notchbook.pattern import (
    Pattern,
    child_name,
    directed,
    locate,
    require,
    require_one,
    resolve,
    split_side,
    spoken,
    with_side,
)
from notchbook.pattern.names import Side
from notchbook.pattern.resolve import Found
from notchbook.style.closures.divided import Divided, divided
from notchbook.style.closures.notches_left import notches_left, opened_by
from notchbook.style.closures.sewn_below import StillSewn, still_sewn
from notchbook.style.closures.straight_center import seams_to_itself


@dataclass(frozen=True, slots=True)
class FlySide:
    """The fly edge on one of the wearer's sides: its name and its upper end, and the piece as it is."""

    side: Side
    piece: str
    edge: str
    top: str
    bottom: str


@dataclass(frozen=True, slots=True)
class FlyCut:
    """The pattern with the fly divided off, the parts of each divided edge, the sides by their word, and the
    seams that are sewn below the fly."""

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]]
    sides: Mapping[Side, FlySide]
    sewn_below: tuple[str, ...]


def named_on(pattern: Pattern, name: str, side: Side) -> str:
    """The name on one of the wearer's sides: as it is where both are alike. NameLost."""
    if isinstance(resolve(pattern, name), Found):
        return name
    sided = with_side(name, side)
    require(pattern, sided)
    return sided


def fly_cut(pattern: Pattern, edge: str, top: str, length: float, slug: str) -> FlyCut:
    """Divide the front seam so far below its upper end, mm, on both sides; it is sewn below only.

    StepRefused ``fly-too-long``, ``closure-sewn-elsewhere``.
    """
    sides: dict[Side, FlySide] = {}
    splits: dict[str, tuple[str, ...]] = {}
    stays: dict[str, StillSewn] = {}
    cuts: list[Divided] = []
    after = pattern
    both: tuple[Side, Side] = ("right", "left")
    for side in both:
        name = require_one(pattern, named_on(pattern, edge, side))
        upper = top if top in pattern.index else with_side(top, side)
        directed(pattern, name, upper)
        if name not in splits:
            _require_room(pattern, name, length)
            cut = divided(pattern, (name, upper), length, ("fly", "seam", "fly_end"), slug)
            cuts.append(cut)
            after = after.with_pieces(cut.piece)
            splits[name] = cut.parts
            stays[name] = StillSewn(cut.far, upper, cut.point)
        bottom = stays[name].new_end
        sides[side] = FlySide(side, pattern.carriers[name], child_name(name, "fly"), upper, bottom)
    gone = seams_to_itself(pattern, tuple(splits))
    kept = [still_sewn(pattern, pattern.seams[seam], stays) for seam in gone]
    after = after.with_seams(*kept).with_notches(*notches_left(pattern, opened_by(*cuts)))
    return FlyCut(after, splits, sides, tuple(gone))


def _require_room(pattern: Pattern, name: str, length: float) -> None:
    most = pattern.edges[name].length - _SEWN_BELOW
    if length >= most:
        raise StepRefused("fly-too-long", length=length, edge=spoken(name), most=most)


_SEWN_BELOW = 20.0
"""mm of the seam that stay sewn below a fly at the least. Own judgment."""


def notch_depth(pattern: Pattern, edge: str, top: str, notch: str) -> float:
    """How far below the upper end of the front seam the notch lies on it, mm, on both sides.

    Where they differ the lesser counts, so that the fly opens past neither notch. NameLost where there is
    none; StepRefused ``fly-notch-elsewhere`` where it does not lie on this edge.
    """
    both: tuple[Side, Side] = ("right", "left")
    return min(_depth_on(pattern, edge, top, notch, side) for side in both)


def _depth_on(pattern: Pattern, edge: str, top: str, notch: str, side: Side) -> float:
    name = require_one(pattern, named_on(pattern, edge, side))
    found = pattern.notches.get(with_side(split_side(notch)[0], side)) or pattern.notches.get(notch)
    if found is None:
        raise NameLost(
            "name-lost",
            name=notch,
            candidates=(),
            by="no step",
            reason="no notch of this pattern has this name",
            wanted="notch",
        )
    place = locate(pattern, found.place)
    if place.edge.name != name:
        raise StepRefused("fly-notch-elsewhere", notch=spoken(notch), edge=spoken(edge))
    upper = top if top in pattern.index else with_side(top, side)
    return place.distance if place.edge.start == upper else place.edge.length - place.distance
