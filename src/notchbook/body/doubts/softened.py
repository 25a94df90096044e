"""Stops of a population that are a question only: what it knows too little of, and who is none of it.

Loads numpy; imported only where a set is held against a population.
"""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.together import Together
from notchbook.body.doubts.weak_relations import body_may_be_so, weakly_known
from notchbook.body.measure_set import MeasureSet
from notchbook.body.sides import plain_key
from notchbook.errors import InputError


def softened(
    doubts: Sequence[Doubt], measures: MeasureSet, whole: Together, stop: float
) -> tuple[Doubt, ...]:
    """The doubts, a stop turned into a check where nothing sure stands behind it.

    So on a dress form or a size of a chart, and where the value would not be stopped without the measures
    that are weakly known. The words ask whether the body is so.
    """
    found = []
    for doubt in doubts:
        others = [one.key for other in doubts if other is not doubt for one in other.suspects[:1]]
        if doubt.level == "stop" and not _is_sure(doubt, measures, whole, others, stop):
            doubt = _as_check(doubt)
        question = body_may_be_so(doubt.suspects, measures) if doubt.level == "check" else ""
        found.append(_asking(doubt, question))
    return tuple(found)


def _is_sure(doubt: Doubt, measures: MeasureSet, whole: Together, others: Sequence[str], stop: float) -> bool:
    if measures.kind != "body":
        return False
    weak = weakly_known(measures)
    if not weak & set(whole.keys):
        return True
    named = {plain_key(one.key) for one in doubt.suspects}
    rest = whole.standings({*weak, *named, *(plain_key(key) for key in others)})
    offs = [
        abs(one.value - rest[key].expected) / rest[key].sd
        for one in doubt.suspects
        if (key := plain_key(one.key)) in rest and key not in weak
    ]
    return any(z >= stop for z in offs)


def _as_check(doubt: Doubt) -> Doubt:
    code = "measure-unlike-rest" if doubt.code == "measure-against-rest" else doubt.code
    facts = {**doubt.problem.facts, "rest": "the rest"}
    return replace(doubt, level="check", problem=InputError(code, **facts))


def _asking(doubt: Doubt, question: str) -> Doubt:
    if not question or "hint" not in doubt.problem.facts:
        return doubt
    facts = {**doubt.problem.facts, "hint": f"{question}{doubt.problem.facts['hint']}"}
    return replace(doubt, problem=InputError(doubt.code, **facts))
