"""A piece made of named paths that follow each other round it."""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.pattern import CutInstruction, InternalLine, Piece
from notchbook.pattern.names import instance_of
from notchbook.style._outlined import Side, outlined
from notchbook.style.pockets.parts import cut_as


def ring_piece(
    name: str,
    called: tuple[str, tuple[CutInstruction, ...]],
    sides: Sequence[Side],
    below: Piece,
    *,
    clockwise: bool,
    lines: tuple[InternalLine, ...] = (),
) -> Piece:
    """The piece; ``called``: its title and how it is cut, ``below``: the piece whose grain it has."""
    return Piece(
        name=name,
        title=called[0],
        outline=outlined(name, sides, clockwise=clockwise),
        lines=lines,
        grain=replace(below.grain),
        cut=cut_as(below),
        side=below.side,
        instructions=called[1],
        rule=instance_of(name),
        stretches=below.stretches,
    )
