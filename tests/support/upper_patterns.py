"""Bodice and sleeve of the invented bodies of the sheets, and faults planted into their data."""

from collections.abc import Callable
from copy import deepcopy
from functools import cache
from typing import Any

import numpy as np

from notchbook.app.drafting import draft
from notchbook.pattern import pattern_to_data
from notchbook.recipe import Replay
from support.asked_of_upper import asked_of
from support.skirt_judge import length, polyline
from upper_sheets import SETTINGS, bodies

Data = dict[str, Any]


@cache
def drafted(name: str = "medium-92", block: str = "sleeve") -> Replay:
    """The draft of one of the invented bodies."""
    measures = next(made for known, _, made in bodies() if known == name)
    return draft(block, measures, SETTINGS if block == "sleeve" else {})


def wanted_of(run: Replay) -> dict[str, float]:
    """What each length was asked to come to, mm with ease, by measure key; not what the draft promises."""
    return asked_of(run)


def data_of(run: Replay) -> Data:
    """The pattern as plain data."""
    return pattern_to_data(run.pattern)


def with_fault(data: Data, name: str, change: Callable[[list[list[Any]]], None]) -> Data:
    """A copy in which the path of one edge or line was changed."""
    copy = deepcopy(data)
    for piece in copy["pieces"]:
        for thing in (*piece["outline"], *piece["lines"]):
            if thing["name"] == name:
                change(thing["path"])
                return copy
    raise KeyError(name)


def longer(by: float) -> Callable[[list[list[Any]]], None]:
    """Grows a path from its start so that it is so many mm longer."""

    def change(rows: list[list[Any]]) -> None:
        whole = length(polyline(rows))
        _moved(rows, lambda place, start: start + (place - start) * (whole + by) / whole)

    return change


def turned(degrees: float, about: int = 0) -> Callable[[list[list[Any]]], None]:
    """Turns a path about its start (0) or its end (-1)."""
    angle = np.radians(degrees)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])

    def change(rows: list[list[Any]]) -> None:
        _moved(rows, lambda place, pivot: pivot + turn @ (place - pivot), about)

    return change


def _moved(rows: list[list[Any]], move: Callable[[Any, Any], Any], about: int = 0) -> None:
    pivot = np.array(rows[about][-2:], dtype=float)
    for row in rows:
        places = np.array(row[1:], dtype=float).reshape(-1, 2)
        row[1:] = np.array([move(place, pivot) for place in places]).ravel().tolist()


def with_place(data: Data, notch: str, by: float) -> Data:
    """A copy in which a notch lies so many mm farther along its edge."""
    copy = deepcopy(data)
    next(one for one in copy["notches"] if one["name"] == notch)["place"]["amount"] += by
    return copy


def with_mark(data: Data, name: str, by: float) -> Data:
    """A copy in which a mark lies so many mm higher."""
    copy = deepcopy(data)
    marks = (mark for piece in copy["pieces"] for mark in piece["marks"])
    next(mark for mark in marks if mark["name"] == name)["y"] += by
    return copy
