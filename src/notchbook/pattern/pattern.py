"""A pattern: pieces, seams and cut data under names that hold them together."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from types import MappingProxyType
from typing import Literal, TypeVar

from notchbook.errors import HouseFault
from notchbook.pattern.cut import Allowance, CornerStyle, Notch
from notchbook.pattern.elastic import Elastic
from notchbook.pattern.making import LeatherMaking
from notchbook.pattern.names import Side, spoken
from notchbook.pattern.operation import Operation
from notchbook.pattern.piece import Edge, Intake, PartKind, Piece
from notchbook.pattern.seam import Seam

NameKind = PartKind | Literal["seam", "notch", "group"]

_Value = TypeVar("_Value")


def frozen_map(items: Mapping[str, _Value] | Iterable[tuple[str, _Value]] = ()) -> Mapping[str, _Value]:
    """A read-only mapping in the given order."""
    return MappingProxyType(dict(items))


STRETCH_FABRIC = "stretch fabric"
"""What the garment's own cloth is called where it was drafted for how far it stretches."""

STRETCH_LINING = "stretch lining"
"""What its lining is called: it must give as far."""


@dataclass(frozen=True, slots=True)
class Group:
    """What was one name and now is several, in order along the old direction; ``by`` is the step."""

    members: tuple[str, ...]
    by: str


@dataclass(frozen=True, slots=True)
class Fate:
    """What became of a name that is gone: merged into others, or removed, by which step and why."""

    kind: Literal["merged", "removed"]
    into: tuple[str, ...]
    by: str
    reason: str


@dataclass(frozen=True)
class Pattern:
    """Pieces, seams and cut data; immutable. Steps make a new pattern from an old one.

    ``groups`` holds names that now stand for several things, ``fates`` names that are gone.
    ``allowances`` and ``corners`` are kept by the name of edge (or group) and point.
    """

    pieces: Mapping[str, Piece] = field(default_factory=frozen_map)
    seams: Mapping[str, Seam] = field(default_factory=frozen_map)
    notches: Mapping[str, Notch] = field(default_factory=frozen_map)
    groups: Mapping[str, Group] = field(default_factory=frozen_map)
    fates: Mapping[str, Fate] = field(default_factory=frozen_map)
    allowances: Mapping[str, Allowance] = field(default_factory=frozen_map)
    corners: Mapping[str, CornerStyle] = field(default_factory=frozen_map)
    materials: Mapping[str, str] = field(default_factory=lambda: frozen_map({"self": "fabric"}))
    elastics: Mapping[str, Elastic] = field(default_factory=frozen_map)
    operations: Mapping[str, Operation] = field(default_factory=frozen_map)
    making: LeatherMaking | None = None

    @cached_property
    def carriers(self) -> Mapping[str, str]:
        """For each edge, intake, line, mark and point: the piece that carries it now."""
        found: dict[str, str] = {}
        for piece in self.pieces.values():
            for name in piece.names():
                found.setdefault(name, piece.name)
        return MappingProxyType(found)

    @cached_property
    def edges(self) -> Mapping[str, Edge]:
        """All edges by name; a name that stands twice is our fault."""
        found: dict[str, Edge] = {}
        for piece in self.pieces.values():
            for edge in piece.outline:
                if edge.name in found:
                    raise HouseFault("name-twice", name=edge.name)
                found[edge.name] = edge
        return MappingProxyType(found)

    @cached_property
    def intakes(self) -> Mapping[str, Intake]:
        """All intakes by name."""
        return MappingProxyType(
            {intake.name: intake for piece in self.pieces.values() for intake in piece.intakes}
        )

    @cached_property
    def drawn_in(self) -> tuple[Intake, ...]:
        """The intakes by which edges are drawn in, gathers and eases, piece by piece."""
        return tuple(
            intake for piece in self.pieces.values() for intake in piece.intakes if intake.is_drawn_in
        )

    @cached_property
    def index(self) -> Mapping[str, NameKind]:
        """Every living name and what it names (groups included)."""
        found: dict[str, NameKind] = {}
        for piece in self.pieces.values():
            found.update(piece.named)
        found.update(dict.fromkeys(self.seams, "seam"))
        found.update(dict.fromkeys(self.notches, "notch"))
        found.update(dict.fromkeys(self.groups, "group"))
        return MappingProxyType(found)

    def piece_of(self, name: str) -> Piece:
        """The piece that carries the named edge, intake, line, mark or point."""
        return self.pieces[self.carriers[name]]

    def with_pieces(self, *pieces: Piece, without: Iterable[str] = ()) -> "Pattern":
        """The pattern with these pieces put in place of those of the same name, others taken out."""
        gone = set(without)
        kept = {name: piece for name, piece in self.pieces.items() if name not in gone}
        kept.update({piece.name: piece for piece in pieces})
        return replace(self, pieces=frozen_map(kept))

    def with_seams(self, *seams: Seam, without: Iterable[str] = ()) -> "Pattern":
        """The pattern with these seams added or replaced, others taken out."""
        return replace(self, seams=_changed(self.seams, {s.name: s for s in seams}, without))

    def with_notches(self, *notches: Notch, without: Iterable[str] = ()) -> "Pattern":
        """The pattern with these notches added or replaced, others taken out."""
        return replace(self, notches=_changed(self.notches, {n.name: n for n in notches}, without))

    def with_allowances(self, allowances: Mapping[str, Allowance]) -> "Pattern":
        """The pattern with these allowances set, by edge or group name."""
        return replace(self, allowances=_changed(self.allowances, allowances))

    def with_corners(self, corners: Mapping[str, CornerStyle]) -> "Pattern":
        """The pattern with these corner styles set, by point name."""
        return replace(self, corners=_changed(self.corners, corners))

    def with_materials(self, materials: Mapping[str, str]) -> "Pattern":
        """The pattern with these materials named."""
        return replace(self, materials=_changed(self.materials, materials))

    def with_making(self, making: LeatherMaking) -> "Pattern":
        """The pattern with its way of making told."""
        return replace(self, making=making)

    def with_elastics(self, *elastics: Elastic, without: Iterable[str] = ()) -> "Pattern":
        """The pattern with these elastics added or replaced, others taken out."""
        return replace(self, elastics=_changed(self.elastics, {e.name: e for e in elastics}, without))

    def with_operations(self, *operations: Operation, without: Iterable[str] = ()) -> "Pattern":
        """The pattern with these lines of the sewing order added or replaced, others taken out."""
        return replace(self, operations=_changed(self.operations, {o.name: o for o in operations}, without))


def _changed(
    old: Mapping[str, _Value], new: Mapping[str, _Value], without: Iterable[str] = ()
) -> Mapping[str, _Value]:
    gone = set(without)
    kept = {name: value for name, value in old.items() if name not in gone}
    kept.update(new)
    return frozen_map(kept)


def title_of(piece: Piece) -> str:
    """The title of a piece with its side, as written on paper: ``Left front``."""
    if piece.side == "both":
        return piece.title
    return f"{piece.side.capitalize()} {piece.title[:1].lower()}{piece.title[1:]}"


__all__ = [
    "Fate",
    "Group",
    "NameKind",
    "Pattern",
    "Side",
    "frozen_map",
    "spoken",
    "title_of",
]
