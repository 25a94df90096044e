"""A set-in sleeve as it stands in the pattern: its cap as one run, where the notches stand, its middle."""

from dataclasses import dataclass
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Edge, Notch, Pattern, Piece, part_name, piece_name, require, sewn_length, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import place_distance

Which = Literal["front", "back"]

HALVES: tuple[Which, Which] = ("front", "back")
"""The halves of a cap in the direction of the outline."""

BALANCE = "balance_notch"
"""The last word of the notch below which a cap is sewn flat."""

EASE = "ease_notch"
"""The last word of the notch at which the ease of a cap ends."""


@dataclass(frozen=True)
class FoundSleeve:
    """A sleeve in one piece, its cap whole.

    ``cap`` holds the edges of the cap from the front underarm to the back one; ``notches`` says how far along
    it the front and the back balance notch stand, ``top`` where it meets the shoulder seam, ``crown`` where
    it is highest, mm.
    """

    slug: str
    piece: Piece
    cap: tuple[Edge, ...]
    notches: tuple[float, float]
    top: float
    crown: float

    def name(self, *words: str) -> str:
        """The name of a part of the sleeve."""
        return part_name(self.piece.name, *words)

    @property
    def line(self) -> Path:
        """The cap as one line, from the front underarm to the back one."""
        return line_of(self.cap)


def line_of(edges: tuple[Edge, ...]) -> Path:
    """Edges that follow each other as one line."""
    return Path(tuple(segment for edge in edges for segment in edge.path.segments))


def cap_height(cap: tuple[Edge, ...]) -> float:
    """How high the top of a cap lies over the middle between its two ends, mm."""
    line = line_of(cap)
    return line.bounds().max_y - (line.start.y + line.end.y) / 2.0


def sleeve_found(pattern: Pattern, slug: str) -> FoundSleeve:
    """The sleeve of this name, whose cap is not gathered yet.

    StepRefused ``sleeve-missing`` where there is none, ``sleeve-in-parts`` where it lies on several pieces,
    ``sleeve-full-already`` where its cap is gathered, ``sleeve-no-notch`` without its balance notches.
    """
    name = piece_name(slug, "sleeve")
    if name not in pattern.pieces:
        there = sorted(piece.split(".", 1)[0] for piece in pattern.pieces if last_word(piece) == "sleeve")
        raise StepRefused("sleeve-missing", sleeve=slug, there=there or ["none"])
    piece = pattern.pieces[name]
    members = {which: require(pattern, part_name(name, f"cap_{which}")) for which in HALVES}
    every = [member for which in HALVES for member in members[which]]
    if any(not piece.has_edge(member) for member in every):
        raise StepRefused("sleeve-in-parts", sleeve=spoken(name))
    if any(intake.is_drawn_in and intake.edge in every for intake in piece.intakes):
        raise StepRefused("sleeve-full-already", sleeve=spoken(name))
    cap = tuple(piece.edge(member) for member in every)
    top = sewn_length(pattern, part_name(name, "cap_front"))
    notches = (top - notch_from_top(pattern, name, "front"), top + notch_from_top(pattern, name, "back"))
    crown = line_of(cap).nearest(piece.points[part_name(name, "crown")]).distance_along
    return FoundSleeve(slug, piece, cap, notches, top, crown)


def notch_from_top(pattern: Pattern, sleeve: str, which: Which) -> float:
    """How far the balance notch of half a cap stands from where the cap meets the shoulder seam, mm."""
    cap, top = part_name(sleeve, f"cap_{which}"), part_name(sleeve, "cap_top")
    notch = notch_on(pattern, cap, BALANCE)
    if notch is None:
        raise StepRefused("sleeve-no-notch", cap=spoken(cap))
    distance = place_distance(pattern, notch.place)
    return distance if notch.place.from_point == top else sewn_length(pattern, cap) - distance


def notch_on(pattern: Pattern, edge: str, word: str) -> Notch | None:
    """The notch with this last word on an edge or group; None where there is none."""
    for notch in pattern.notches.values():
        if last_word(notch.name) == word and notch.place.edge == edge:
            return notch
    return None
