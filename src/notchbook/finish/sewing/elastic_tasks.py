"""Elastics in the sewing order: laid on the edge of an opening and turned in, or closed into their casing."""

from collections.abc import Iterator, Sequence

from notchbook.finish.sewing.joints import Joints
from notchbook.finish.sewing.laid_linings import linings_along
from notchbook.finish.sewing.seam_words import titled
from notchbook.finish.sewing.task import Task
from notchbook.pattern import Elastic, Pattern, split_side
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.resolve import expand

_RANK = 4
"""After the hems that end at the opening."""

_LAID_ON = (
    "Close the {elastic} to a ring, lay it on the wrong side of its edge, quarter to quarter, stitch it on "
    "stretched, turn the edge in and stitch again"
)
_ROUND_LEG = (
    "Close the {elastic} to a ring, lay it on the wrong side of its edge, flat over the front, stitch it on "
    "stretched over the back alone, turn the edge in and stitch again"
)
_LEG = "leg_elastic"
"""How an elastic is called that is cut for the back of a leg opening: the front would draw up."""

_CATCHING = "; it catches the sides of the {linings}"

_IN_CASING = "Turn the casing over the {elastic}, closed to a ring, and stitch it down without catching it"


def elastic_tasks(pattern: Pattern, joints: Joints) -> Iterator[Task]:
    """One line for each elastic, after the seams that close its opening; where its step has lines
    of its own, they tell of it."""
    told = {instance_of(name) for name in pattern.operations}
    for elastic in pattern.elastics.values():
        members = [edge for name in elastic.edges for edge in expand(pattern, name)[0]]
        if not members or instance_of(elastic.name) in told:
            continue
        edges = [pattern.edges[name] for name in members]
        ends = {point for edge in edges for point in (edge.start, edge.end)}
        after = frozenset(split_side(seam)[0] for point in ends for seam in joints.at(point))
        yield Task(
            split_side(elastic.name)[0],
            "hems",
            _text(pattern, elastic, members),
            tuple(members),
            after,
            _RANK,
        )


def _text(pattern: Pattern, elastic: Elastic, members: Sequence[str]) -> str:
    """An elastic that follows a girth of the body lies in a casing, one that follows its edge on that, where
    it catches the sides of a lining laid there."""
    on_edge = _ROUND_LEG if last_word(elastic.name) == _LEG else _LAID_ON
    words = on_edge if elastic.girth is None else _IN_CASING
    linings = linings_along(pattern, members) if elastic.girth is None else ()
    catching = _CATCHING.format(linings=titled(linings)) if linings else ""
    return words.format(elastic=elastic.title.lower()) + catching
