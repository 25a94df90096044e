"""A whole opening by one word: all edges of that word, laid one after the other as a tape would run."""

from typing import Literal

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, resolve, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import Found
from notchbook.style._band_openings import at_center, ends_of, meet

OpeningWord = Literal["neck", "armhole", "waist", "hem", "sleeve_hem", "leg_opening"]
"""The openings that a band is laid round."""


def whole_opening(pattern: Pattern, word: OpeningWord) -> tuple[EdgeUse, ...]:
    """The edges of the opening in order, from the center of the body where it reaches that, of one side.

    StepRefused ``band-opening-missing`` where no edge has the word, ``band-opening-several`` where they are
    more than one opening.
    """
    names = _edges_of(pattern, word)
    if not names:
        raise StepRefused("band-opening-missing", opening=word.replace("_", " "))
    rest = {name: ends_of(pattern, EdgeUse(name, _first_end(pattern, name))) for name in names}
    uses = [_begin(pattern, rest)]
    place = _other_end(rest.pop(uses[0].edge), uses[0].starts_at)
    while following := _next(pattern, rest, place):
        uses.append(following)
        place = _other_end(rest.pop(following.edge), following.starts_at)
    if rest:
        left = tuple(spoken(name) for name in rest)
        raise StepRefused("band-opening-several", opening=word.replace("_", " "), edges=left)
    return tuple(uses)


def _edges_of(pattern: Pattern, word: OpeningWord) -> list[str]:
    """The edges and groups of the word on pieces of the garment's own cloth; a sleeve's hem is no hem."""
    is_sleeve, wanted = word == "sleeve_hem", "hem" if word == "sleeve_hem" else word
    found = []
    for name in (*pattern.groups, *pattern.edges):
        answer = resolve(pattern, name) if last_word(name) == wanted else None
        if not isinstance(answer, Found):
            continue
        piece = pattern.piece_of(answer.members[0])
        is_own = any(told.material == "self" for told in piece.instructions)
        if is_own and (wanted != "hem" or (last_word(piece.name) == "sleeve") == is_sleeve):
            found.append(name)
    return found


def _first_end(pattern: Pattern, name: str) -> str:
    found = resolve(pattern, name)
    assert isinstance(found, Found)
    return pattern.edges[found.members[0]].start


def _begin(pattern: Pattern, rest: dict[str, tuple[str, str]]) -> EdgeUse:
    """The first edge from the center of the body; any where the opening does not reach it."""
    uses = [EdgeUse(name, end) for name, ends in rest.items() for end in ends]
    return next((use for use in uses if at_center(pattern, use.starts_at, tuple(uses))), uses[0])


def _next(pattern: Pattern, rest: dict[str, tuple[str, str]], place: str) -> EdgeUse | None:
    """The edge that goes on from this corner."""
    uses = (EdgeUse(name, end) for name, ends in rest.items() for end in ends)
    return next((use for use in uses if meet(pattern, place, use.starts_at)), None)


def _other_end(ends: tuple[str, str], start: str) -> str:
    return ends[1] if ends[0] == start else ends[0]
