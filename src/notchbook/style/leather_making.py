"""Leather or coated cloth as a way of making: what is cut of it is slit, hemmed and marked otherwise than
cloth.

A needle hole in leather stays, and nothing is shrunk in. So notches are short slits in the allowance, nothing
is drilled, seams and hems are narrow and glued, darts are trimmed or moved into seams, a cap has hardly any
ease, and panels are no larger than a hide gives. The step shapes nothing: it is told to the pieces when they
are made cut-ready, and to the checks.
"""

from collections.abc import Iterator

from notchbook.pattern import Finding, Pattern, Piece, Severity, part_name, spoken, worded
from notchbook.pattern.making import LeatherMaking
from notchbook.pattern.operation import Operation
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.style_figure import RangedFigure
from notchbook.style._ranged_amount import ranged
from notchbook.style.leather.figures import CAP_EASE, HEM, NOTCH, SEAM, SKIVED_HEM, SKIVED_SEAM
from notchbook.style.leather.hides import HIDES, HideName
from notchbook.units import TOLERANCES

_SELF = "self"


class LeatherMakingParameters(StepParameters):
    """The ``hide``, and the widths of what is glued, slit and skived."""

    hide: HideName = "lamb"
    """What it is cut from; coated cloth comes by the roll, and its panels may be of any size."""
    panel_length: AmountText | None = None
    """The largest panel along the backbone; empty for what such hides usually give."""
    panel_width: AmountText | None = None
    """The largest panel across; empty for what such hides usually give."""
    seam: AmountText | None = None
    """The seam allowance at most; empty for 10 mm."""
    hem: AmountText | None = None
    """The hem at most, turned once and glued; empty for 30 mm."""
    notch: AmountText | None = None
    """How deep a notch is slit into the allowance; empty for 3 mm."""
    skived_seam: AmountText | None = None
    """Over what width the edges of seams are skived; empty for 8 mm."""
    skived_hem: AmountText | None = None
    """Over what width the edges of hems are skived; empty for 25 mm."""
    cap_ease: AmountText | None = None
    """How much longer than its armhole a sleeve cap may be; empty for 10 mm."""


def run(pattern: Pattern, context: StepContext, parameters: LeatherMakingParameters) -> Change:
    """Write the way of making down; no shape changes."""
    hide = HIDES[parameters.hide]

    def given(field: str, figure: RangedFigure) -> float:
        return ranged(context, getattr(parameters, field), figure, field)

    making = LeatherMaking(
        _SELF,
        hide.cloth,
        _panel(context, parameters.panel_length, hide.length, "panel_length"),
        _panel(context, parameters.panel_width, hide.width, "panel_width"),
        given("seam", SEAM),
        given("hem", HEM),
        given("notch", NOTCH),
        given("skived_seam", SKIVED_SEAM),
        given("skived_hem", SKIVED_HEM),
        given("cap_ease", CAP_EASE),
    )
    after = pattern.with_making(making).with_materials({_SELF: hide.cloth})
    after = after.with_operations(*_operations(context.slug, making))
    return Change(after, notes=tuple(_dart_notes(pattern, context)))


def _panel(context: StepContext, asked: str | None, usual: float, field: str) -> float:
    """A side of the largest panel, mm; none for what comes by the roll."""
    return usual if asked is None or usual == 0.0 else context.positive(asked, field)


def _operations(slug: str, making: LeatherMaking) -> tuple[Operation, ...]:
    """What is done before and between: marking, skiving, holding, gluing."""
    skived = Operation(
        part_name(slug, "edges_skived"),
        "prepare",
        "Skive the edges of seams and hems where layers cross, and try the glue, the needle and the foot on "
        "a scrap.",
    )
    held = Operation(
        part_name(slug, "edges_held"),
        "prepare",
        "Hold the edges with clips or tape, never with pins, and sew with a long stitch; do not sew twice, "
        "for the holes stay.",
        (),
        (skived.name,),
    )
    glued = Operation(
        part_name(slug, "seams_glued"),
        "prepare",
        "Glue the allowances of each seam open and tap them flat before another seam crosses it. Air the "
        "room while the glue dries.",
        (),
        (held.name,),
    )
    return (skived, held, glued) if making.is_hide else (held, glued)


def _dart_notes(pattern: Pattern, context: StepContext) -> Iterator[Finding]:
    """Each dart that is sewn in the material: it must be trimmed, for it cannot be pressed to one side."""
    for piece in pattern.pieces.values():
        if not any(told.material == _SELF for told in piece.instructions):
            continue
        for intake in piece.darts:
            if _is_open(piece, intake.first_leg, intake.second_leg):
                yield worded(
                    context.step,
                    "leather-dart",
                    Severity.NOTE,
                    piece=piece.name,
                    where=intake.name,
                    names=(intake.name,),
                    dart=spoken(intake.name),
                )


def _is_open(piece: Piece, first: str, second: str) -> bool:
    mouth = piece.edge(first).path.start.distance_to(piece.edge(second).path.end)
    return mouth > TOLERANCES.seam_walk


STEP = StepDefinition(
    operation="leather_making",
    version=1,
    kind="cut",
    phase="whole",
    title="Make in leather",
    sentence="of {hide}",
    parameters=LeatherMakingParameters,
    run=run,
)
