"""From which values a doubt judges, where others were put aside."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.standing import Standing
from notchbook.body.quantity_words import said_key
from notchbook.body.sides import plain_key
from notchbook.errors import InputError

FEW: Final = 3
"""So many values are named when a doubt rests on no more."""


def naming_the_rest(doubts: Sequence[Doubt], standings: Sequence[Standing]) -> tuple[Doubt, ...]:
    """The doubts with the words for what their values are judged from."""
    keys = list(dict.fromkeys(plain_key(one.key) for one in standings))
    accused = [{plain_key(one.key) for one in doubt.suspects} for doubt in doubts]
    found = []
    for place, doubt in enumerate(doubts):
        others = set().union(*(accused[other] for other in range(len(doubts)) if other != place))
        kept = [key for key in keys if key not in others and key not in accused[place]]
        aside = [key for key in keys if key in others and key not in accused[place]]
        found.append(_with_rest(doubt, kept, aside))
    return tuple(found)


def _with_rest(doubt: Doubt, kept: Sequence[str], aside: Sequence[str]) -> Doubt:
    if "rest" not in doubt.problem.facts:
        return doubt
    if len(kept) <= FEW and (aside or len(kept) < 2) and kept:
        words = f"the rest, judged by {listed([said_key(key) for key in kept])} alone"
    elif aside:
        words = f"the rest, judged without {listed([said_key(key) for key in aside])}"
    else:
        return doubt
    return replace(doubt, problem=InputError(doubt.code, **{**doubt.problem.facts, "rest": words}))


def listed(words: Sequence[str]) -> str:
    """``a, b and c``."""
    return " and ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else words[0]
