"""How the two parts of a cut are called: by the words of the step, and by which lies left of the line."""

from dataclasses import dataclass

from notchbook.pattern import Edge, Piece, child_name, part_name, piece_name
from notchbook.pattern.names import last_word, split_side
from notchbook.pattern.splitting import EdgeNames
from notchbook.style.lines.inner_darts import Called
from notchbook.style.lines.seams import NotchChoice


@dataclass(frozen=True, slots=True)
class PartWords:
    """The words of a step for the parts: the first is that with the named ends; and which notches it asks
    for."""

    roles: tuple[str, str]
    titles: tuple[str, str]
    notches: NotchChoice


@dataclass(frozen=True, slots=True)
class Naming:
    """How the parts of one cut are called: first that with the named ends, which lies left or right."""

    roles: tuple[str, str]
    pieces: tuple[str, str]
    first_is_left: bool

    @property
    def left(self) -> Called:
        """The part left of the line."""
        index = 0 if self.first_is_left else 1
        return Called(self.roles[index], self.pieces[index])

    @property
    def right(self) -> Called:
        """The part right of the line."""
        index = 1 if self.first_is_left else 0
        return Called(self.roles[index], self.pieces[index])


def naming_of(slug: str, piece: Piece, words: PartWords, *, first_is_left: bool) -> Naming:
    """How the parts of this piece are called under the slug of the step."""
    first, second = (piece_name(slug, f"{last_word(piece.name)}_{role}") for role in words.roles)
    return Naming(words.roles, (first, second), first_is_left)


def edge_names(edge: Edge, before: Called, after: Called) -> EdgeNames:
    """The parts under their roles; the new corners are called by all words of the edge, so that two
    edges of one piece never get the same."""
    words = split_side(edge.name)[0].split("/", 1)[1]
    word = f"{words.replace('/', '_')}_end"
    return EdgeNames(
        child_name(edge.name, before.role),
        child_name(edge.name, after.role),
        part_name(before.name, word),
        part_name(after.name, word),
    )
