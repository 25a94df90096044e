"""A tailored sleeve of two pieces: a top and an under sleeve, bent at the elbow.

The sleeve is laid flat along two folds. The seam at the forearm lies a little inside the front fold, the seam
at the hind arm inside the back fold above and on it at the hem: what the top sleeve is wider the under sleeve
is narrower. Round the bend of the elbow the seams differ in length: at the hind arm the top is eased in, at
the forearm it is stretched. Above the hem both run square to it: it is straight, and a deep hem lies flat.
"""

from collections.abc import Iterator
from typing import Any

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Finding, Measured, Pattern, Severity, sewn_length, spoken, worded
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._ranged_amount import told_outside
from notchbook.style.sleeves.crossing import crosses
from notchbook.style.sleeves.figures import BEND_REACH, ELBOW_BEND, FOREARM_SHIFT, HEM_SQUARE, HIND_ARM_SHIFT
from notchbook.style.sleeves.found import FoundSleeve, sleeve_found
from notchbook.style.sleeves.hems import hem_class
from notchbook.style.sleeves.two_piece.folds import Bend, Folds, folds_of
from notchbook.style.sleeves.two_piece.joining import arm_seams, sewn_anew, what_became
from notchbook.style.sleeves.two_piece.panels import Panels, panels_of
from notchbook.style.sleeves.two_piece.seam_lines import Shift

_LEAST_HEM = 20.0
"""mm of the hem that are left to the under sleeve. Own judgment."""

_STRAIGHT_HEM = "hem_jacket"
"""A tailored sleeve is that of a jacket or coat, and its hem as deep as theirs."""


class TwoPieceParameters(StepParameters):
    """The ``sleeve``, how far its two seams lie beside the folds, and how much it is bent."""

    sleeve: Word = "sleeve"
    """The sleeve that is cut in two; it reaches below the elbow."""
    forearm_shift: AmountText = FOREARM_SHIFT.amount
    """How far the seam at the forearm lies inside the front fold; 20 to 30 mm hide it."""
    hind_arm_shift: AmountText = HIND_ARM_SHIFT.amount
    """How far the seam at the hind arm lies inside the back fold at the cap."""
    hind_arm_hem: AmountText = "0 mm"
    """The same at the hem; nothing: on the fold, so that a vent opens at the back."""
    bend: AmountText = ELBOW_BEND.amount
    """How far the hem swings forward from the elbow."""
    bend_reach: AmountText = BEND_REACH.amount
    """How far from the elbow the bend reaches, up and down."""
    hem_square: AmountText = HEM_SQUARE.amount
    """How high above the hem the seams run square to it: as deep as the hem is turned up, or as high as the
    vent at the hind arm. Nothing: they run straight from the elbow to a curved hem, turned up less deep."""


def run(pattern: Pattern, context: StepContext, parameters: TwoPieceParameters) -> Change:
    """Lay the sleeve along its folds, cut it beside them, name anew what is sewn to what."""
    sleeve = sleeve_found(pattern, parameters.sleeve)
    elbow = _elbow(sleeve)
    bend = Bend(
        context.not_negative(parameters.bend, "bend"),
        context.positive(parameters.bend_reach, "bend_reach"),
        context.not_negative(parameters.hem_square, "hem_square"),
    )
    folds = folds_of(sleeve, elbow, sewn_length(pattern, sleeve.name("hem")), bend)
    panels = _panels(context, parameters, sleeve, folds)
    after = pattern.with_pieces(panels.top, panels.under, without=(sleeve.piece.name,))
    splits, merges, removals, notches, seams = what_became(pattern, sleeve, panels)
    after = after.with_notches(without=notches).with_seams(without=seams)
    after = sewn_anew(after, sleeve)
    after = arm_seams(after, context.slug, panels)
    hem = sleeve.name("hem")
    after = after.with_allowances({hem: Allowance(_hem_class_of(panels, is_square=bend.square > 0.0))})
    longer = sewn_length(after, panels.top.outline[0].name) + sewn_length(after, panels.under.outline[0].name)
    grown = {
        sleeve.name("elbow_line"): panels.elbow_grows,
        panels.top.outline[0].name: longer - sewn_length(pattern, hem),
    }
    notes = (*_told(context.slug, panels), *_unusual(context, parameters, panels.top.name))
    return Change(after, splits, merges, removals, asked=grown, notes=notes)


def _hem_class_of(panels: Panels, *, is_square: bool) -> str:
    """The class of its hem: that of a jacket where it is straight, else less deep the more it bends."""
    hems = (panel.outline[0].path for panel in (panels.top, panels.under))
    return _STRAIGHT_HEM if is_square else hem_class(*hems)


def _panels(
    context: StepContext, parameters: TwoPieceParameters, sleeve: FoundSleeve, folds: Folds
) -> Panels:
    """The two pieces; StepRefused ``two-piece-hem-narrow`` where the seams leave nothing of the hem to the
    under sleeve, ``two-piece-crosses`` where a piece would cross itself."""
    forearm = context.not_negative(parameters.forearm_shift, "forearm_shift")
    front = Shift(forearm, forearm)
    back = Shift(
        context.not_negative(parameters.hind_arm_shift, "hind_arm_shift"),
        context.not_negative(parameters.hind_arm_hem, "hind_arm_hem"),
    )
    left = folds.front.hem.distance_to(folds.back.hem) - front.at_hem - back.at_hem
    if left < _LEAST_HEM:
        raise StepRefused("two-piece-hem-narrow", left=left, least=_LEAST_HEM)
    panels = panels_of(context.slug, sleeve, folds, front, back)
    for piece in (panels.top, panels.under):
        if crosses(piece, [edge.name for edge in piece.outline]):
            raise StepRefused("two-piece-crosses", piece=spoken(piece.name))
    return panels


def _elbow(sleeve: FoundSleeve) -> float:
    """The height of the elbow below the biceps line, mm; StepRefused ``two-piece-not-plain``."""
    lines = {line.name: line.path for line in sleeve.piece.lines}
    has_darts = any(intake.has_legs for intake in sleeve.piece.intakes)
    if len(sleeve.cap) != 2 or has_darts or sleeve.name("elbow_line") not in lines:
        raise StepRefused("two-piece-not-plain", sleeve=spoken(sleeve.piece.name))
    line = lines[sleeve.name("elbow_line")]
    return line.point_at(line.length / 2.0).y


def _told(slug: str, panels: Panels) -> Iterator[Finding]:
    """By how much the seams differ round the elbow."""
    forearm, hind_arm = ([line.path.length for line in pair] for pair in (panels.forearm, panels.hind_arm))
    yield worded(
        STEP.operation,
        "two-piece-elbow-ease",
        Severity.NOTE,
        Measured(hind_arm[0] - hind_arm[1]),
        piece=panels.top.name,
        where=panels.top.outline[-1].name,
        eased=hind_arm[0] - hind_arm[1],
        stretched=forearm[1] - forearm[0],
    )


def _unusual(context: StepContext, parameters: TwoPieceParameters, piece: str) -> Iterator[Finding]:
    """Amounts outside of what is usual."""
    for field, amount, figure in (
        ("forearm_shift", parameters.forearm_shift, FOREARM_SHIFT),
        ("hind_arm_shift", parameters.hind_arm_shift, HIND_ARM_SHIFT),
        ("bend", parameters.bend, ELBOW_BEND),
    ):
        yield from told_outside(STEP.operation, piece, field, context.mm(amount), figure)


def _as_drawn_before(parameters: dict[str, Any]) -> dict[str, Any]:
    """The seams of version 1 ran straight from the elbow to a curved hem."""
    return {**parameters, "hem_square": "0 mm"}


STEP = StepDefinition(
    operation="two_piece_sleeve",
    version=2,
    kind="style",
    title="Two-piece sleeve",
    sentence="{sleeve} in a top and an under sleeve, forearm seam {forearm_shift} inside, hem {bend} forward",
    parameters=TwoPieceParameters,
    run=run,
    upcasters={1: _as_drawn_before},
)
