"""A slit at the lower end of a seam: both edges are turned in along it, and the seam is sewn above only."""

from collections.abc import Iterator

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Notch, Pattern, Place, directed, part_name, spoken
from notchbook.pattern.operation import Operation
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.divided import Divided, all_divided, beside
from notchbook.style.closures.figures import SLIT_TURNED
from notchbook.style.closures.notches_left import notches_left, opened_by
from notchbook.style.closures.sewn_below import StillSewn, still_sewn
from notchbook.style.closures.sewn_mates import opened_ends
from notchbook.style.closures.within_trade import told_outside, told_unusual


class SlitParameters(StepParameters):
    """The seam ``edge`` that opens, its end at the hem, how high the slit is and what is turned in."""

    edge: EdgeName
    """An edge of the seam: its mate opens with it."""
    hem_end: PointName
    """Its end at the hem."""
    height: AmountText = "15 cm"
    """How high the slit is."""
    turned: AmountText = SLIT_TURNED.amount
    """What is turned in along the slit; where it meets the hem both are cut to a miter."""


def run(pattern: Pattern, context: StepContext, parameters: SlitParameters) -> Change:
    """Divide the edge and its mate at the top of the slit; no shape changes."""
    height = context.positive(parameters.height, "height")
    turned = context.positive(parameters.turned, "turned")
    ends = opened_ends(pattern, parameters.edge, parameters.hem_end)
    _require_at_hem(pattern, ends[0])
    words = ("opening", "seam", "opening_end")
    after, cuts = all_divided(pattern, [(*end, height) for end in ends], words, context.slug)
    stays = {cut.edge: StillSewn(cut.far, end[1], cut.point) for cut, end in zip(cuts, ends, strict=True)}
    after = after.with_seams(*(still_sewn(pattern, seam, stays) for seam in pattern.seams.values()))
    after = after.with_allowances({cut.near: Allowance("hem_slit", turned) for cut in cuts})
    after = after.with_corners({end[1]: "turned" for end in ends})
    after = after.with_notches(*notches_left(pattern, opened_by(*cuts)), *_notches(cuts))
    after = after.with_operations(*_operations(context.slug, cuts))
    piece = cuts[0].piece.name
    notes = (
        *told_unusual(piece, "hem_slit", {"height": height}),
        *told_outside(piece, "turned", turned, SLIT_TURNED),
    )
    return Change(after, splits={cut.edge: cut.parts for cut in cuts}, notes=notes)


def _require_at_hem(pattern: Pattern, end: tuple[str, str]) -> None:
    """StepRefused ``slit-not-at-hem`` where the named end does not lie on a hem."""
    piece = pattern.piece_of(directed(pattern, *end)[0].edge.name)
    hems = [edge for edge in piece.outline if edge.kind == "hem" and end[1] in (edge.start, edge.end)]
    if not hems:
        raise StepRefused("slit-not-at-hem", edge=spoken(end[0]), point=spoken(end[1]))


def _notches(cuts: list[Divided]) -> Iterator[Notch]:
    """The top of the slit, where the allowance changes."""
    for cut in cuts:
        yield Notch(beside(cut.point, "notch"), Place(cut.far, cut.point, 0.0), purpose="top of slit")


def _operations(slug: str, cuts: list[Divided]) -> Iterator[Operation]:
    edges = tuple(cut.near for cut in cuts)
    pressed = part_name(slug, "slit")
    text = "Press the seam open and on down the slit; bar its top."
    yield Operation(pressed, "sides", text, edges)
    mitered = part_name(slug, "miter")
    text = "Sew the lower corners of the slit to miters, right sides together, and turn them."
    yield Operation(mitered, "hems", text, edges, (pressed,))
    text = "Turn the edges of the slit in as deep as their allowance, and fell them."
    yield Operation(part_name(slug, "slit_turned"), "hems", text, edges, (mitered,))


STEP = StepDefinition(
    operation="hem_slit",
    version=1,
    kind="style",
    title="Hem slit",
    sentence="{height} high at {edge}, {turned} turned in",
    parameters=SlitParameters,
    run=run,
)
