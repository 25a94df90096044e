"""Lengths that were taken to another waist than the set names.

Loads numpy; imported only where a set is held against a population.
"""

import math
from collections.abc import Iterator

from notchbook.body.doubts.slips.hypothesis import Hypothesis
from notchbook.body.doubts.slips.slip_table import slip_table
from notchbook.body.doubts.slips.waist_taken import WaistTaken
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.together import Together


def to_another_waist(one: Standing, waist: WaistTaken) -> Iterator[Hypothesis]:
    """This one length was taken to the other waist."""
    direction = waist.directions.get(one.key)
    if direction is None:
        return
    kind = slip_table()["navel"]
    spread = math.hypot(one.sd, waist.spread * direction)
    z = (one.value - one.expected - waist.size * direction) / spread
    gain = one.z**2 / 2.0 + math.log(one.sd / spread) - z**2 / 2.0
    yield Hypothesis(kind.name, waist.question, (one.key,), (), gain + math.log(kind.prior), abs(z))


def group_to_another_waist(kept: Together, waist: WaistTaken) -> Iterator[Hypothesis]:
    """Lengths that are taken together went to the other waist together."""
    kind = slip_table()["navel"]
    for group in waist.groups:
        directions = {key: waist.directions[key] for key in group if key in kept.keys}
        if len(directions) > 1:
            gain = kept.gain_of_shift(directions, waist.size, waist.spread)
            yield Hypothesis(kind.name, waist.question, tuple(directions), (), gain + math.log(kind.prior))
