"""A contradiction of the measures is told on a piece that the pattern has, whatever the block calls it."""

from typing import Any

import pytest

from support.bodice_bodies import body
from support.joined_blocks import drafted

BLOCKS: dict[str, tuple[str, dict[str, Any], str]] = {
    "bodice": ("bodice", {}, "bodice.front"),
    "torso": ("torso", {}, "torso.front"),
    "dress": ("dress", {}, "dress.bodice_front"),
    "dress in one": ("dress", {"waist_seam": "none"}, "dress.front"),
}


@pytest.mark.parametrize(("block", "parameters", "front"), BLOCKS.values(), ids=BLOCKS.keys())
def test_the_piece_of_a_contradiction_is_there(block: str, parameters: dict[str, Any], front: str) -> None:
    done = drafted(block, body(front_waist_length=398.0), **parameters)
    told = [note for note in done.notes if note.contradiction is not None]
    assert told, "the front is far too short for the back"
    assert {note.piece for note in told} == {front}
    assert front in done.pattern.pieces
