"""What is cut of leather: narrow allowances, short slits for notches, no holes, panels cut singly."""

from dataclasses import replace
from typing import Final

from notchbook.finish.allowance import Given
from notchbook.finish.house_table import HouseTable
from notchbook.finish.row import Row
from notchbook.pattern import Pattern, Piece, frozen_map
from notchbook.pattern.making import LeatherMaking

LEAST_SLIT: Final = 2.0
"""mm; a shorter slit is not found again (common practice: slits of 2 to 3 mm)."""

_OWN_WIDTH: Final = frozenset(
    {"zip", "zip_lapped", "zip_invisible", "center_back", "welt_end", "elastic_edge", "elastic_casing"}
)
"""Classes whose width comes from what is sewn in, a zip, an elastic, the corners of a slit."""

_MUSLIN: Final = "muslin"
"""A fitting muslin is cut in cloth, whatever the garment will be made of."""


def making_of(pattern: Pattern, house: HouseTable, piece: Piece) -> LeatherMaking | None:
    """The way of making in leather that the piece is cut by; None for cloth, and in a muslin."""
    making = pattern.making
    if making is None or house.name == _MUSLIN:
        return None
    return making if any(told.material == making.material for told in piece.instructions) else None


def given_in_leather(given: Given, making: LeatherMaking, kind: str) -> Given:
    """The allowance of an edge, no wider than leather is sewn or glued with, unless a step gave its width."""
    if given.is_own or given.allowance_class in _OWN_WIDTH:
        return given
    is_hem = kind == "hem" or given.allowance_class.startswith("hem")
    return replace(given, width=min(given.width, making.hem if is_hem else making.seam))


def slit_marks(house: HouseTable, making: LeatherMaking) -> HouseTable:
    """The house table with its notches as short slits."""
    slit = "slits of 2 to 3 mm in leather"
    depth = min(house.mark("notch_depth"), making.notch)
    least = min(house.mark("notch_least"), LEAST_SLIT, depth)
    rows = {"notch_depth": depth, "notch_least": least}
    marks = {**house.marks, **{key: Row(value, slit, "common practice") for key, value in rows.items()}}
    return replace(house, marks=frozen_map(marks))


def quantity_words(piece: Piece, times: int) -> str:
    """How a piece is cut from hides: left and right apart, face up, so that each goes round its flaws."""
    if piece.cut == "pair":
        return f"cut {times} left, {times} right, singly"
    return f"cut {times}, right side up"
