"""How many darts serve a body: chosen once, on the base measures."""

from dataclasses import replace

from notchbook.blocks.legs.draft import draft_trousers
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.errors import DraftRefused


def count_darts(given: TrousersGiven) -> tuple[int, int]:
    """Darts in each front and in each back: what a first draft with the customary ones asks for.

    Women: one in front, two behind; men and children: none in front, one behind, two for a large intake. What
    is too small to be worth its sewing has none.
    """
    front, back = (1, 2) if given.wearer == "women" else (0, 1)
    try:
        half = draft_trousers(replace(given, front_darts=front, back_darts=back))
    except DraftRefused:
        return front, back
    worth, one = proportion("dart.worth"), proportion("dart.most_single")
    front_intake, back_intake = sum(half.front.intakes), sum(half.back.intakes)
    if front_intake < worth:
        front = 0
    if back_intake < worth:
        return front, 0
    return front, 1 if back_intake <= one else 2
