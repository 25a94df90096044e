"""Cut a style line across one or several pieces: a yoke, a panel, a hip seam, a seam under the bust.

Each piece is cut from a place on one named edge to a place on another, along a fair curve or straight, or
straight across to wherever the line meets the other edge. The two parts get paired seams with balance
notches. Darts that end on the line are closed into the part in which they open. The edges that are cut stay
as groups under their old names. If on another body the line would end on another part of an edge or run
across another edge, that is lost, not a new shape: an edge of several parts needs the part that is meant.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import NameLost, StepRefused
from notchbook.pattern import Located, Pattern, directed, locate, require_one, spoken
from notchbook.recipe import Change, PlaceParameters, StepContext, StepDefinition, StepParameters, Word
from notchbook.style.lines.called_parts import PartWords
from notchbook.style.lines.cutting import Cut, cut_piece
from notchbook.style.lines.parameters import LineParameters
from notchbook.style.lines.seams import NotchChoice
from notchbook.style.lines.shape import line_path
from notchbook.style.lines.squared import squared_end


class StyleLineParameters(StepParameters):
    """The cuts, one for each piece, and how the two parts are called.

    The part that holds the named ends (``from_point``) of both places is ``first_role``, the other
    ``second_role``; the titles are added to the title of the piece.
    """

    lines: Annotated[tuple[LineParameters, ...], Field(min_length=1)]
    """One line for each piece that is cut."""
    first_role: Word = "above"
    """What the part with the named ends is called in names."""
    second_role: Word = "below"
    """What the other part is called in names."""
    first_title: str = "yoke"
    """Added to the title of the part with the named ends."""
    second_title: str = ""
    """Added to the title of the other part."""
    notches: NotchChoice = "balance"
    """balance: one pair off the middle; apex: two pairs, above and below where the curve is deepest."""


def run(pattern: Pattern, context: StepContext, parameters: StyleLineParameters) -> Change:
    """Cut every line; all or nothing."""
    words = PartWords(
        (parameters.first_role, parameters.second_role),
        (parameters.first_title, parameters.second_title),
        parameters.notches,
    )
    change = Change(pattern)
    for line in parameters.lines:
        change = cut_piece(change, context, words, _cut(change.pattern, context, line))
    return change


def _cut(pattern: Pattern, context: StepContext, line: LineParameters) -> Cut:
    """The line with its places found.

    The part with the named ends lies left of the line or right, and both ends must say the same: left of it
    lies what comes before the start and after the end on their edges.
    """
    start = _located(pattern, context, line.start)
    is_squared = line.shape == "square"
    end = squared_end(pattern, line, start) if is_squared else _located(pattern, context, line.end)
    before_start = _is_counted_from_start(pattern, line.start, start)
    before_end = _is_counted_from_start(pattern, line.end, end)
    if start.piece == end.piece and before_start == before_end:
        raise StepRefused(
            "line-ends-disagree",
            piece=spoken(start.piece),
            first=spoken(line.start.from_point),
            second=spoken(line.end.from_point),
        )
    return Cut(
        start,
        end,
        lambda begins, stops: line_path(line, begins, stops, context.mm),
        first_is_left=before_start,
        darts=line.darts,
        keeps_start=line.keeps_grain == "start",
        waves=0 if line.shape in ("straight", "square") else len(line.through) + 1,
    )


def _located(pattern: Pattern, context: StepContext, place: PlaceParameters) -> Located:
    """The place on the one edge that is meant: which edge is cut is written down, never a result."""
    found = locate(pattern, context.place(pattern, place))
    wanted = require_one(pattern, place.part or place.edge)
    if found.edge.name != wanted:
        raise NameLost(
            "style-line-elsewhere",
            name=wanted,
            edge=spoken(place.edge),
            found=spoken(found.edge.name),
            wanted=spoken(wanted),
            candidates=(found.edge.name,),
            by="",
        )
    return found


def _is_counted_from_start(pattern: Pattern, place: PlaceParameters, found: Located) -> bool:
    """Whether the named end of the place is on the side of the start of the edge that is cut."""
    walk = directed(pattern, place.edge, place.from_point)
    return next(step.forward for step in walk if step.edge.name == found.edge.name)


STEP = StepDefinition(
    operation="cut_style_line",
    version=2,
    kind="style",
    title="Cut style line",
    sentence="{lines:{start} to {end}, closing {darts}}",
    parameters=StyleLineParameters,
    run=run,
    upcasters={1: dict},
)
