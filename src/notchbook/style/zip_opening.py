"""An opening for a zip in a seam: a wider allowance and a notch where the zip stops, on both edges of the
seam."""

from collections.abc import Iterator

from notchbook.pattern import Allowance, Notch, Pattern, Place, directed, locate, part_name, piece_name
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)


class ZipParameters(StepParameters):
    """The ``edge`` with the zip, the end from which it opens, and the ``length`` of the opening."""

    edge: EdgeName
    """The seam with the zip."""
    from_point: PointName
    """The end from which it opens."""
    length: AmountText = "18 cm"
    """How long the opening is."""


def run(pattern: Pattern, context: StepContext, parameters: ZipParameters) -> Change:
    """Write down the allowance for the zip and the notch at its stop; no shape changes."""
    length = context.positive(parameters.length, "length")
    stop = Place(parameters.edge, parameters.from_point, length)
    stops = (stop, *(Place(edge, end, length) for edge, end in _sewn_to(pattern, stop)))
    notches = (_notch(pattern, context, one) for one in stops)
    allowances = {one.edge: Allowance("zip") for one in stops}
    return Change(pattern.with_notches(*notches).with_allowances(allowances))


def _sewn_to(pattern: Pattern, stop: Place) -> Iterator[tuple[str, str]]:
    """The edges that are sewn to this one alone, each with the end that meets the named end.

    Where a seam joins several edges, or the edge to its own reflection, there is none.
    """
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            if [use.edge for use in own] == [stop.edge] and len(other) == 1 and other[0].edge != stop.edge:
                (begins, _), (mate, far) = (_ends(pattern, use.edge, use.starts_at) for use in (*own, *other))
                yield other[0].edge, mate if begins == stop.from_point else far


def _ends(pattern: Pattern, edge: str, starts_at: str) -> tuple[str, str]:
    """The two ends of an edge or group, the one first from which a seam is walked."""
    walk = directed(pattern, edge, starts_at)
    last = walk[-1]
    return starts_at, last.edge.end if last.forward else last.edge.start


def _notch(pattern: Pattern, context: StepContext, stop: Place) -> Notch:
    owner = piece_name(context.slug, last_word(locate(pattern, stop).piece))
    return Notch(part_name(owner, "zip_notch"), stop, purpose="zip stop")


STEP = StepDefinition(
    operation="zip_opening",
    version=1,
    kind="cut",
    title="Zip opening",
    sentence="{length} at {edge} from {from_point}",
    parameters=ZipParameters,
    run=run,
)
