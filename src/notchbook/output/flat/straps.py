"""Shoulder straps in the flat: from where they are caught up to where front and back meet on the shoulder."""

from collections.abc import Iterator, Mapping
from typing import Final

from notchbook.geometry import Path, Point
from notchbook.output.flat.joined import Placing, center_x
from notchbook.output.flat.laid import laying
from notchbook.output.flat.outer import ViewWord, words_of
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import Located, Pattern, Piece, locate, split_side
from notchbook.pattern.names import instance_of, last_word

_PURPOSE: Final = "strap"

_WIDTH: Final = 8.0
"""mm that a strap is drawn wide. Own judgment: a picture."""


def strap_shapes(pattern: Pattern, motions: Mapping[str, Placing], view: ViewWord) -> Iterator[FlatShape]:
    """One for each strap of this view on the wearer's right; the left one is its reflection."""
    for strap in _straps(pattern):
        caught = _caught(pattern, strap)
        here = [one for one in caught if one.piece in motions and view in words_of(pattern.pieces[one.piece])]
        if len(caught) != len(("front", "back")) or not here:
            continue
        piece = pattern.pieces[here[0].piece]
        foot = motions[piece.name](laying(piece, center_x(piece))(here[0].position))
        away = [abs(one.position.x - center_x(pattern.pieces[one.piece])) for one in caught]
        rise = (strap.bounds.width + sum(one.position.y for one in caught)) / 2.0 - here[0].position.y
        head = Point(foot.x / abs(foot.x) * sum(away) / 2.0 if foot.x else 0.0, foot.y + rise)
        yield _strap(foot, head)


def _straps(pattern: Pattern) -> tuple[Piece, ...]:
    """The pieces that are straps: strips of the steps that notch where they are caught."""
    owners = {instance_of(name) for name, notch in pattern.notches.items() if notch.purpose == _PURPOSE}
    return tuple(
        piece
        for piece in pattern.pieces.values()
        if last_word(piece.name) == "strap" and instance_of(piece.name) in owners
    )


def _caught(pattern: Pattern, strap: Piece) -> list[Located]:
    """Where the strap of the wearer's right is caught, in front and behind."""
    return [
        locate(pattern, notch.place)
        for name, notch in pattern.notches.items()
        if notch.purpose == _PURPOSE
        and instance_of(name) == instance_of(strap.name)
        and split_side(name)[1] != "left"
    ]


def _strap(foot: Point, head: Point) -> FlatShape:
    across = Point(_WIDTH / 2.0, 0.0)
    outline = Path.polyline((foot - across, foot + across, head + across, head - across), closed=True)
    return FlatShape(outline, (), (outline,))
