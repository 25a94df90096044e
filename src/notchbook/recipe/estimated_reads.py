"""Which measures a pattern rests on that nobody took: estimates among those that its steps read."""

from collections.abc import Iterator

from notchbook.body import Measure, MeasureSet, measure_table, plain_key, sided_key
from notchbook.pattern.names import Side
from notchbook.recipe.replay import Replay


def estimated_reads(replay: Replay) -> dict[str, Measure]:
    """Each estimate that a step of the run read, by its key (``hip_depth``, ``hip_depth@left``).

    In the order of the measure table. What a set holds but no step read is not among them.
    """
    measures = replay.measures
    names = {name for key, side in _reads(replay) for name in _stored(measures, key, side)}
    order = list(measure_table())
    found = sorted(names, key=lambda name: (order.index(plain_key(name)), name))
    return {name: measures.values[name] for name in found if measures.values[name].status == "estimated"}


def keys_read(replay: Replay) -> tuple[str, ...]:
    """The keys that the steps asked for, each once in the order of the table, taken or not."""
    asked = {key for key, _ in _reads(replay)}
    return tuple(key for key in measure_table() if key in asked)


def _reads(replay: Replay) -> Iterator[tuple[str, Side]]:
    """Every key and side that was asked for; a right side that was drafted for both counts for both."""
    for track in (replay.right, replay.left, replay.whole):
        for state in track.states if track is not None else ():
            for key, side, _ in state.reads:
                yield key, side
                if replay.left is None and side == "right":
                    yield key, "left"


def _stored(measures: MeasureSet, key: str, side: Side) -> tuple[str, ...]:
    """The values that answer for a key on a side: its own, the plain one, or left and right together."""
    if side != "both":
        own = sided_key(key, side)
        names: tuple[str, ...] = (own if own in measures.values else key,)
    else:
        names = (key,) if key in measures.values else (sided_key(key, "left"), sided_key(key, "right"))
    return tuple(name for name in names if name in measures.values)
