"""Rulers for an armhole as a hand draws it, on its points from tip to underarm; not the project's own."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Points = NDArray[np.float64]

_LEVEL = 8.0
"""Degrees off its end at which an armhole still counts as level there."""

_SPAN = 9
"""Steps of the evenly spaced points over which a bend is measured."""


@dataclass(frozen=True)
class ArmholeHand:
    """``room`` is the way from the inmost place to the underarm, ``level`` how long the line lies level there
    (mm), ``radius`` the quickest bend of the lower half (mm), ``lean`` by how many degrees it leans outward
    at half its height, ``hollow`` the height of the place farthest from the straight way, over the whole."""

    room: float
    level: float
    radius: float
    lean: float
    hollow: float


def armhole_hand(run: Points) -> ArmholeHand:
    """The figures of one armhole whose center lies at x = 0 and whose tip comes first."""
    places, step = _even(run)
    turned = np.unwrap(np.arctan2(*np.diff(places, axis=0).T[::-1]))
    heights = (places[:, 1] - places[-1, 1]) / (places[0, 1] - places[-1, 1])
    bends = np.abs(turned[_SPAN:] - turned[:-_SPAN]) / (step * _SPAN)
    low = heights[_SPAN // 2 : _SPAN // 2 + len(bends)] <= 0.5
    chord, offsets = places[0] - places[-1], places - places[-1]
    away = np.abs(chord[0] * offsets[:, 1] - chord[1] * offsets[:, 0])
    off_end = np.degrees(np.abs(turned - turned[-1]))
    return ArmholeHand(
        room=float(places[-1, 0] - places[:, 0].min()),
        level=float((off_end < _LEVEL).sum() * step),
        radius=float(1.0 / bends[low].max()),
        lean=float(np.degrees(turned[int(np.abs(heights - 0.5).argmin())]) + 90.0),
        hollow=float(heights[int(away.argmax())]),
    )


def _even(run: Points) -> tuple[Points, float]:
    """400 places at even distances along a run, and that distance, mm."""
    steps = np.hypot(*np.diff(run, axis=0).T)
    kept = np.concatenate([[True], steps > 1e-9])
    along = np.concatenate([[0.0], np.cumsum(steps)])[kept]
    places = np.linspace(0.0, along[-1], 400)
    x, y = (np.interp(places, along, run[kept, axis]) for axis in (0, 1))
    return np.column_stack([x, y]), float(along[-1] / 399.0)
