"""How many darts serve a body: chosen once, on the base measures."""

from dataclasses import replace

from notchbook.blocks.legs.belly_room import room_for
from notchbook.blocks.legs.crotch_fit import CrotchFit
from notchbook.blocks.legs.drawing import DrawnPanel
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.errors import DraftRefused

_FULL = 2.0
"""mm; a single dart so near to the widest one would take more if it could."""


def count_darts(given: TrousersGiven) -> tuple[int, int]:
    """Darts in each front and in each back: what a first draft with one of the customary ones asks for.

    Women: one in front, one or two behind; men and children: none in front. Two behind for a large intake.
    What is too small to be worth its sewing has none. The front is asked when the back's count is known: its
    dart is no wider than one of those behind, so that there is none before a back without.
    """
    front, back = (1 if given.wearer == "women" else 0), 1
    try:
        drawn = _drafted(given, front, back)
        if _intake(drawn[1]) > proportion("back.most_dart") - _FULL:
            back, drawn = 2, _drafted(given, front, 2)
        tried, back = back, _back_count(_intake(drawn[1]))
        if front and back != tried:
            drawn = _drafted(given, front, back)
        if front and (not back or _intake(drawn[0]) < proportion("dart.worth")):
            front = 0
    except DraftRefused:
        pass
    return front, back


def worth_sewing(given: TrousersGiven, front: DrawnPanel, back: DrawnPanel) -> TrousersGiven:
    """The same with as many darts sewn as this drawn leg is worth; the others are kept, empty.

    Two behind become one where one takes up both; what is narrower than is worth its sewing goes to center
    and side. A front has no dart before a back that has lost its own.
    """
    behind = min(given.back_darts, _back_count(_intake(back)))
    if behind < given.back_darts:
        fewer = given.back_darts - behind
        given = replace(given, back_darts=behind, back_empty=given.back_empty + fewer)
        return given if behind else _less_in_front(given, given.front_darts)
    least = proportion("dart.worth")
    worth = int(_intake(front) / least)
    return _less_in_front(given, max(0, given.front_darts - worth))


def _less_in_front(given: TrousersGiven, fewer: int) -> TrousersGiven:
    return replace(given, front_darts=given.front_darts - fewer, front_empty=given.front_empty + fewer)


def _back_count(intake: float) -> int:
    if intake < proportion("dart.worth"):
        return 0
    return 1 if intake <= proportion("dart.most_single") else 2


def _drafted(given: TrousersGiven, front: int, back: int) -> tuple[DrawnPanel, DrawnPanel]:
    tried = replace(given, front_darts=front, back_darts=back)
    drawn = CrotchFit(tried, room_for(tried)).roughly()
    return drawn.front, drawn.back


def _intake(panel: DrawnPanel) -> float:
    """The mouths of a panel's darts together, mm."""
    return sum(dart.first.distance_to(dart.second) for dart in panel.top.darts)
