"""An armhole drawn more evenly: where it would have a bump below the across level.

A shoulder point far out bends the upper armhole much; where the lower one goes on straight from there, it
slackens and turns again. The hand then turns it sooner, and lets the across level lie a little lower.
"""

from dataclasses import replace
from typing import Literal

from notchbook.blocks._least import nearest_serving
from notchbook.blocks.upper.bump import bump
from notchbook.blocks.upper.frames import Frames
from notchbook.blocks.upper.leaning import Armholes, draw_armholes, leans_back
from notchbook.blocks.upper.levers import Pulled
from notchbook.blocks.upper.proportions import proportion

_HALVINGS = 4
"""Rounds in which the least is sought: to a sixteenth of the most."""


def even_out(frames: Frames, pulled: Pulled, armholes: Armholes) -> tuple[Pulled, Armholes]:
    """The levers and armholes with each one that has a bump drawn more evenly, by as little as does.

    Left as it is where not even the most does, or where the front would come out less hollow than the back.
    """
    for which in (0, 1):
        if bump(armholes[which]) > proportion("armhole.most_bump"):
            pulled, armholes = _evened(frames, pulled, armholes, which)
    return pulled, armholes


def _evened(
    frames: Frames, pulled: Pulled, armholes: Armholes, which: Literal[0, 1]
) -> tuple[Pulled, Armholes]:
    found = _served(frames, pulled, which, 1.0)
    if found is None:
        return pulled, armholes
    least = nearest_serving(lambda share: _served(frames, pulled, which, share), 0.0, 1.0, _HALVINGS)
    return least or found


def _served(
    frames: Frames, pulled: Pulled, which: Literal[0, 1], share: float
) -> tuple[Pulled, Armholes] | None:
    """Levers and armholes with this one evened by a share; None where that does not serve."""
    evened = replace(pulled, front_evened=share) if which == 0 else replace(pulled, back_evened=share)
    drawn = draw_armholes(frames, evened)
    serves = bump(drawn[which]) <= proportion("armhole.evened_bump") and not leans_back(drawn)
    return (evened, drawn) if serves else None
