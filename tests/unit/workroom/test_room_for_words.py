"""A title stands beside the grain line and beside a crease, on neither."""

import pytest

from notchbook.workroom.answers.inner_room import inner_room
from support.trouser_bodies import trousers_run


@pytest.mark.parametrize("name", ["trousers.front", "trousers.back"])
def test_the_title_of_a_leg_lies_on_no_upright_line(name: str) -> None:
    piece = trousers_run().pattern.pieces[name]
    room = inner_room(piece)
    crease = next(line for line in piece.lines if line.name.endswith("crease_line")).path.start.x
    half = room.title_width / 2.0
    for upright in (crease, room.low.x):
        assert not room.title.x - half + 0.5 < upright < room.title.x + half - 0.5
    assert room.title_width > 60.0, "there is room for the words"
