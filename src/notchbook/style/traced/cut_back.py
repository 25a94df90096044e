"""What follows where a piece was cut back: its seams, notches, groups and allowances."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from notchbook.pattern import Edge, EdgeUse, Notch, Pattern, Piece, Seam, require
from notchbook.pattern.names import last_word
from notchbook.pattern.pattern import Group, frozen_map
from notchbook.pattern.resolve import expand


@dataclass(frozen=True, slots=True)
class CutBack:
    """A piece before and after, the two edges that became shorter (at the end of the first, at the start of
    the second), the edges that were made between them, and what these are called together (None: nothing).

    ``corners`` are the two corners that the cut edges had before; ``shed`` are edges beside them that went
    whole, each a part of one edge with what is left.
    """

    old: Piece
    new: Piece
    beside: tuple[str, str]
    corners: tuple[str, str]
    shed: tuple[str, ...]
    made: tuple[Edge, ...]
    group: str | None

    @property
    def gone(self) -> set[str]:
        """What the piece has no more: edges, and lines and darts on it."""
        return set(self.old.names()) - set(self.new.names())

    @property
    def moved(self) -> dict[str, str]:
        """The two corners that are gone, and those that stand in their places."""
        first, second = self.beside
        return {
            self.corners[0]: self.new.edge(first).end,
            self.corners[1]: self.new.edge(second).start,
        }

    @property
    def lost(self) -> dict[str, float]:
        """How much shorter the two edges became, and all of those that went whole beside them, mm."""
        shorter = {name: self.old.edge(name).length - self.new.edge(name).length for name in self.beside}
        return {**shorter, **{name: self.old.edge(name).length for name in self.shed}}


def followed(pattern: Pattern, cut: CutBack, step: str) -> Pattern:
    """The pattern with the piece as it is now: what lay on the lost edges is gone, with the
    notches of its seams; what was counted from a
    lost corner is counted from the new one."""
    taken = cut.gone
    groups = dict(_groups(pattern, taken, set(cut.shed)))
    gone = taken | (pattern.groups.keys() - groups.keys())
    if cut.group is not None:
        groups[cut.group] = Group(tuple(edge.name for edge in cut.made), step)
    found = (_counted(pattern, cut, notch, gone) for notch in pattern.notches.values())
    notches = {notch.name: notch for notch in found if notch is not None}
    dead = {
        name
        for name, seam in pattern.seams.items()
        if {use.edge for use in (*seam.first, *seam.second)} & gone
    }
    notches = {name: notch for name, notch in notches.items() if notch.seam not in dead}
    labels = {last_word(name) for name in notches} | {"start", "end"}
    seams = {name: _sewn(seam, cut.moved, labels) for name, seam in pattern.seams.items() if name not in dead}
    allowances = {name: one for name, one in pattern.allowances.items() if name not in gone}
    return replace(
        pattern.with_pieces(cut.new),
        groups=frozen_map(groups),
        notches=frozen_map(notches),
        seams=frozen_map(seams),
        allowances=frozen_map(allowances),
    )


def _groups(pattern: Pattern, gone: set[str], shed: set[str]) -> Iterator[tuple[str, Group]]:
    """The groups that are left, without what went whole beside the cut; none of which the cut took a part."""
    for name, group in pattern.groups.items():
        living = set(expand(pattern, name)[0])
        if living <= shed or living & (gone - shed):
            continue
        members = tuple(one for one in group.members if not set(expand(pattern, one)[0]) <= shed)
        yield name, replace(group, members=members) if living & shed else group


def _sewn(seam: Seam, moved: Mapping[str, str], labels: set[str]) -> Seam:
    """The seam from the new corner; its ease lies anywhere where a notch that bounded it is gone."""
    between = seam.ease_between
    if between is not None and not set(between) <= labels:
        between = None
    return replace(
        seam, first=_uses(seam.first, moved), second=_uses(seam.second, moved), ease_between=between
    )


def _uses(run: tuple[EdgeUse, ...], moved: Mapping[str, str]) -> tuple[EdgeUse, ...]:
    return tuple(replace(use, starts_at=moved.get(use.starts_at, use.starts_at)) for use in run)


def _counted(pattern: Pattern, cut: CutBack, notch: Notch, gone: set[str]) -> Notch | None:
    """The notch counted from where its edge ends now; None where its place was taken."""
    place = notch.place
    if place.edge in gone:
        return None
    members = require(pattern, place.edge)
    shorter = sum(cut.lost.get(member, 0.0) for member in members)
    if shorter == 0.0 or not any(cut.old.has_edge(member) for member in members):
        return notch
    if place.from_point in cut.moved:
        amount = place.amount - shorter
        if amount < 0.0:
            return None
        return replace(notch, place=replace(place, from_point=cut.moved[place.from_point], amount=amount))
    if place.from_point in gone:
        return None
    length = sum(pattern.edges[member].length for member in members) - shorter
    return None if place.amount > length else notch
