"""A half apron: one panel on the fold that covers half of the hip. Invented for this example."""

from notchbook.geometry import Path, Point
from notchbook.pattern import Allowance, Edge, EdgeKind, Expectation, Pattern, Piece, part_name, piece_name
from notchbook.recipe import AmountText, Change, MeasureNeeds, StepContext, StepDefinition, StepParameters


class ApronParameters(StepParameters):
    """The ``width`` of the whole apron and its ``length`` from the waist."""

    width: AmountText = "1/2 hip"
    length: AmountText = "55 cm"


def run(pattern: Pattern, context: StepContext, parameters: ApronParameters) -> Change:
    """Draft one half: the fold at x = 0, the wearer's right side toward -x, the waist at y = 0."""
    width = context.positive(parameters.width, "width")
    length = context.positive(parameters.length, "length")
    name = piece_name(context.slug, "panel")
    corners = (Point(0.0, 0.0), Point(-width / 2.0, 0.0), Point(-width / 2.0, -length), Point(0.0, -length))
    points = ("waist_center", "waist_side", "hem_side", "hem_center")
    words = ("waist", "side", "hem", "center_front")
    kinds: tuple[EdgeKind, ...] = ("seam", "plain", "hem", "fold")
    outline = tuple(
        Edge(
            part_name(name, words[index]),
            Path.line(corners[index], corners[(index + 1) % 4]),
            part_name(name, points[index]),
            part_name(name, points[(index + 1) % 4]),
            kinds[index],
        )
        for index in range(4)
    )
    panel = Piece(name=name, title="Apron", outline=outline, cut="fold")
    waist = part_name(name, "waist")
    promise = Expectation(
        name=part_name(context.slug, "waist_width"),
        measure="hip_girth",
        names=(waist,),
        times=2,
        body=width,
        ease=0.0,
        reason="the apron covers the front of the hip",
    )
    drafted = pattern.with_pieces(panel).with_allowances({waist: Allowance("waist")})
    return Change(drafted, expectations=(promise,))


STEP = StepDefinition(
    operation="apron",
    version=1,
    kind="block",
    title="Draft apron",
    sentence="{width} wide, {length} long",
    parameters=ApronParameters,
    run=run,
    needs=MeasureNeeds(needed=("hip_girth",)),
)
