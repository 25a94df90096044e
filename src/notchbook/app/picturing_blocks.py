"""A picture of each block for whoever chooses one: a real draft on one invented body."""

import logging
from functools import cache
from typing import Any, Final

from notchbook.app.drafting import completed, trial_recipe
from notchbook.body import set_from_data
from notchbook.errors import NotchbookError
from notchbook.pattern import Pattern
from notchbook.recipe import replay

_LOG = logging.getLogger("notchbook.app")

BODY_OF_PICTURES: Final[dict[str, Any]] = {
    "name": "Invented body of the pictures",
    "unit": "cm",
    "population": "women",
    "measures": {
        "height": 168,
        "neck_base_girth": 37,
        "upper_bust_girth": 88.5,
        "bust_girth": 92,
        "under_bust_girth": 78,
        "waist_girth": 75,
        "hip_girth": 99,
        "hip_depth": 20.5,
        "back_waist_length": 40.5,
        "front_waist_length": 43.8,
        "center_front_length": 35,
        "scye_depth": 19,
        "across_back": 35,
        "across_chest": 33,
        "shoulder_length": 12.3,
        "shoulder_slope": 21,
        "neck_to_bust_point": 26.5,
        "bust_point_width": 19,
        "arm_length": 59,
        "elbow_length": 34,
        "upper_arm_girth": 28,
        "elbow_girth": 26,
        "wrist_girth": 16,
        "outside_leg": 105,
        "standing_rise": 26.5,
        "inside_leg": 78,
        "crotch_length": 70,
        "thigh_girth": 57,
        "knee_girth": 37,
        "knee_depth": 60.5,
        "calf_girth": 36,
        "ankle_girth": 23,
    },
}
"""Invented figures, cm: of no real person and of no size table."""


@cache
def pictured_block(block: str) -> Pattern | None:
    """The block drafted for the invented body, what it asks for answered with the first choice.

    None for a block that this body cannot be drafted with: then it has no picture.
    """
    body = set_from_data(BODY_OF_PICTURES)
    try:
        return completed(replay(trial_recipe(block, body), body)).pattern
    except NotchbookError:
        return None
    except Exception:  # a block that breaks (a plugin's) has no picture; the others can still be chosen
        _LOG.exception("no picture of the block %s", block)
        return None
