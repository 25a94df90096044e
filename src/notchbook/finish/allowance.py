"""Which allowance each edge gets: what the steps say, else the seam's class, else what the edge is."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from notchbook.finish.house_table import HouseTable
from notchbook.pattern import Allowance, Edge, Pattern, require
from notchbook.pattern.resolve import expand

_Said = TypeVar("_Said")

_CLASS_OF_KIND = {"fold": "fold", "hem": "hem"}
"""The class of an edge that neither a step nor a seam speaks for; ``plain`` where the kind is not here."""


RUNS_DOWN_TO = {"seat_seam": "crotch"}
"""Classes whose width runs evenly down to that of another, where an edge of that follows: a seam that is let
out above and must be narrow in the curve below (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Given:
    """The allowance of one edge: its class, the width in mm, and whether a step gave that width itself.

    ``ends``: its widths at both ends, where it runs evenly from the one to the other; ``width`` is that of
    its class.
    """

    allowance_class: str
    width: float
    is_own: bool = False
    ends: tuple[float, float] | None = None


class Allowances:
    """The allowances of every edge of a pattern under one house table.

    What is said of the edge itself comes first; then the smallest group that holds it; then the seam
    that it is sewn in; then its kind (fold 0, hem, plain).
    """

    def __init__(self, pattern: Pattern, house: HouseTable) -> None:
        self._house = house
        self._said = _said_by_edge(pattern)
        self._sewn = _seam_classes(pattern)

    def of(self, edge: Edge) -> Given:
        """The allowance of an edge; InputError ``allowance-class-unknown`` or ``house-value-unusable``."""
        if edge.kind == "fold":
            return Given("fold", 0.0)
        said = self._said.get(edge.name)
        if said is None:
            said = Allowance(self._sewn.get(edge.name) or _CLASS_OF_KIND.get(edge.kind, "plain"))
        if said.width is not None:
            return Given(said.allowance_class, said.width, is_own=True)
        return Given(said.allowance_class, self._house.width(said.allowance_class))


def _said_by_edge(pattern: Pattern) -> dict[str, Allowance]:
    """What the steps say, spread over the edges that each name stands for; the smaller group wins."""
    spread = [
        (require(pattern, name), allowance)
        for name, allowance in pattern.allowances.items()
        if name in pattern.index
    ]
    found: dict[str, Allowance] = {}
    for members, allowance in sorted(spread, key=lambda item: -len(item[0])):
        found.update(dict.fromkeys(members, allowance))
    return found | _in_folds(pattern, found)


def _seam_classes(pattern: Pattern) -> dict[str, str]:
    found: dict[str, str] = {}
    for seam in pattern.seams.values():
        for use in (*seam.first, *seam.second):
            for edge in require(pattern, use.edge):
                found.setdefault(edge, seam.allowance_class)
    return found | _in_folds(pattern, found)


def _in_folds(pattern: Pattern, said: Mapping[str, _Said]) -> dict[str, _Said]:
    """The edge in the fold of a tuck or pleat is finished as the edge beside it."""
    return {
        leg: said[member]
        for intake in pattern.intakes.values()
        if intake.is_folded
        for member in expand(pattern, intake.mouth)[0][:1]
        if member in said
        for leg in (intake.first_leg, intake.second_leg)
        if leg not in said
    }
