"""The straight skirt block: front on the fold, back with a center seam, darts at the waist.

Drafted from direct measures; what the hand does by trial (dart intake, waist curve, side rise) is
solved, so that the sewn waist and the hip are body plus ease exactly. See ``_skirt_halves`` for the
numbers and their sources.
"""

from dataclasses import replace
from typing import Literal

from notchbook.blocks._hip_depth import LEAST_CENTER, usual_hip_depth
from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._skirt_halves import (
    DartLengths,
    Half,
    HalfMeasures,
    dart_demand,
    dart_lengths,
    draft_half,
)
from notchbook.blocks._skirt_notes import LONGEST_SKIRT, WAIST_HEIGHT, draft_notes, length_notes
from notchbook.blocks._skirt_pieces import back_piece, cut_data, expectations, front_piece, seams
from notchbook.body import Side
from notchbook.errors import DraftRefused
from notchbook.pattern import Pattern, frozen_map
from notchbook.recipe import AmountText, Change, MeasureNeeds, StepContext, StepDefinition, StepParameters

DartCount = Literal["auto", 0, 1, 2, 3]

SMALLEST_DART = 8.0
"""mm; a smaller dart is not worth sewing: its intake goes to the other panel or to the side."""

ONE_DART = 28.0
TWO_DARTS = 64.0
"""mm of intake up to which one, and up to which two darts serve a panel.
Source: handbook practice (one to 25 mm, two to 50 mm, 40 to 50 mm at most each)."""

SHORTEST_DART = 78.0
"""mm; a shorter dart makes a point that stands away. Common practice, no source."""


class SkirtParameters(StepParameters):
    """Eases, length and darts of a straight skirt.

    Eases are whole girths (skirt 13-20 mm at the waist, 50-70 mm at the hip: published ease table).
    ``length`` runs at the center back from waist to hem.
    """

    waist_ease: AmountText = "15 mm"
    """Ease of the whole waist; 13 to 20 mm is usual."""
    hip_ease: AmountText = "50 mm"
    """Ease of the whole hip; 50 to 70 mm is usual."""
    length: AmountText = "60 cm"
    """From waist to hem at the center back."""
    front_darts: DartCount = "auto"
    """Darts in each half of the front; auto chooses once, on these measures."""
    back_darts: DartCount = "auto"
    """Darts in each half of the back; auto chooses once, on these measures."""
    front_dart_length: AmountText = "9/20 hip_depth"
    """Length of the front dart nearest to the center."""
    back_dart_length: AmountText = "2/3 hip_depth"
    """Length of the back dart nearest to the center; the next is a tenth shorter."""


def settle(context: StepContext, parameters: SkirtParameters) -> SkirtParameters:
    """Write down the dart counts that serve the base measures."""
    if "auto" not in (parameters.front_darts, parameters.back_darts):
        return parameters
    measures = half_measures(context, parameters, context.side)
    front, back = dart_counts(*dart_demand(measures))
    return parameters.model_copy(
        update={
            "front_darts": front if parameters.front_darts == "auto" else parameters.front_darts,
            "back_darts": back if parameters.back_darts == "auto" else parameters.back_darts,
        }
    )


def dart_counts(front: float, back: float) -> tuple[int, int]:
    """How many darts serve a front and a back that must take up these amounts, mm.

    What is too small for a dart is moved to the other panel.
    """
    if front < SMALLEST_DART:
        front, back = 0.0, front + back
    if back < SMALLEST_DART:
        front, back = (front + back if front else 0.0), 0.0
    return _count(front), _count(back)


def _count(intake: float) -> int:
    if intake < SMALLEST_DART:
        return 0
    if intake <= ONE_DART:
        return 1
    return 2 if intake <= TWO_DARTS else 3


def half_measures(context: StepContext, parameters: SkirtParameters, side: Side) -> HalfMeasures:
    """The measures of one of the wearer's sides with ease, mm."""
    waist_ease = context.mm(parameters.waist_ease, side)
    hip_ease = context.mm(parameters.hip_ease, side)
    waist = context.measure("waist_girth", side) + waist_ease
    hip = context.measure("hip_girth", side) + hip_ease
    hip_depth = context.measure("hip_depth", side)
    front_hip = context.find("front_hip_arc", side)
    front_waist = context.find("front_waist_arc", side)
    outside = context.find("outside_leg", side)
    heights = [
        None if outside is None or (taken := context.find(key, side)) is None else taken - outside + hip_depth
        for key in ("front_waist_to_floor", "back_waist_to_floor")
    ]
    return HalfMeasures(
        waist=waist,
        hip=hip,
        hip_depth=hip_depth,
        front_waist=None if front_waist is None else front_waist + waist_ease / 2.0,
        front_hip=None if front_hip is None else front_hip + hip_ease / 2.0,
        front_height=heights[0],
        back_height=heights[1],
    )


def run(pattern: Pattern, context: StepContext, parameters: SkirtParameters) -> Change:
    """Draft the block into the pattern."""
    half = _draft_side(context, parameters)
    _require_depth(context, half)
    length = context.positive(parameters.length, "length")
    hem = half.back.height - length
    if hem >= 0.0:
        raise DraftRefused("skirt-above-hip", length=length, hip_depth=half.back.height)
    names = PanelNames(context.slug)
    front, back = front_piece(names, half.front, hem), back_piece(names, half.back, hem)
    drafted = pattern.with_pieces(front.piece, back.piece).with_seams(*seams(names))
    drafted = cut_data(drafted, names, half, {"waist": "waist", "hem": "hem_skirt_straight"})
    groups = frozen_map({**pattern.groups, **front.groups(context.step), **back.groups(context.step)})
    girths = {
        "waist": (context.measure("waist_girth"), context.mm(parameters.waist_ease)),
        "hip": (context.measure("hip_girth"), half.hip - context.measure("hip_girth")),
    }
    return Change(
        pattern=replace(drafted, groups=groups),
        expectations=expectations(context.slug, girths),
        notes=(
            *draft_notes(names, half, context.mm(parameters.hip_ease) - girths["hip"][1]),
            *length_notes(names, length, _floor(context)),
        ),
    )


def _floor(context: StepContext) -> float:
    """The way from the waist to the floor, mm: measured, else from the height, else that of a tall body."""
    outside, height = context.find("outside_leg", "both"), context.find("height", "both")
    if outside is not None:
        return outside
    if height is None:
        return LONGEST_SKIRT
    return WAIST_HEIGHT * height - context.measures.drop_below_natural


def _require_depth(context: StepContext, half: Half) -> None:
    """Refuse a waist that comes to lie on the hip line, with what hip depth would be usual."""
    center = min(half.front.height, half.back.height)
    if center >= LEAST_CENTER:
        return
    usual = usual_hip_depth(context)
    hip_depth = context.measure("hip_depth")
    raise DraftRefused(
        "skirt-hip-depth-short",
        hip_depth=hip_depth,
        waist=context.measure("waist_girth"),
        hip=context.measure("hip_girth"),
        center=center,
        expected=usual.expected,
        spread=usual.spread,
        away=usual.away(hip_depth),
    )


def _draft_side(context: StepContext, parameters: SkirtParameters) -> Half:
    """Draft this side; where the two sides differ, both get the same waist at the centers.

    The centers belong to both sides: their height is the mean of what the two sides would have alone.
    """
    own = _given(context, parameters, context.side)
    other = _given(context, parameters, "left" if context.side == "right" else "right")
    if own == other:
        return draft_half(*own)
    drawn = [draft_half(*given) for given in (own, other)]
    shared = replace(
        own[0],
        front_height=sum(half.front.height for half in drawn) / 2.0,
        back_height=sum(half.back.height for half in drawn) / 2.0,
    )
    return draft_half(shared, own[1])


def _given(context: StepContext, parameters: SkirtParameters, side: Side) -> tuple[HalfMeasures, DartLengths]:
    """The measures and the dart lengths of one of the wearer's sides."""
    if parameters.front_darts == "auto" or parameters.back_darts == "auto":
        raise DraftRefused("count-not-settled", step=context.step)
    front = max(context.mm(parameters.front_dart_length, side), SHORTEST_DART)
    back = max(context.mm(parameters.back_dart_length, side), SHORTEST_DART)
    lengths = DartLengths(
        dart_lengths(front, parameters.front_darts), dart_lengths(back, parameters.back_darts)
    )
    return half_measures(context, parameters, side), lengths


STEP = StepDefinition(
    operation="skirt",
    version=1,
    kind="block",
    title="Draft skirt",
    sentence="waist ease {waist_ease}, hip ease {hip_ease}, length {length} at center back",
    parameters=SkirtParameters,
    run=run,
    needs=MeasureNeeds(
        needed=("waist_girth", "hip_girth", "hip_depth"),
        helpful=(
            "front_waist_arc",
            "front_hip_arc",
            "outside_leg",
            "front_waist_to_floor",
            "back_waist_to_floor",
        ),
    ),
    settle=settle,
)
