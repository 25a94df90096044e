"""The straight skirt block: front on the fold, back with a center seam, darts at the waist.

Drafted from direct measures; what the hand does by trial (dart intake, waist curve, side rise) is
solved, so that the sewn waist and the hip are body plus ease exactly. See ``skirts.halves`` for the
numbers and their sources.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated, Any, Literal

from pydantic import Field

from notchbook.blocks._hip_depth import LEAST_CENTER, usual_hip_depth
from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._shared_centers import shared_centers
from notchbook.blocks.skirts.figures import usual_eases
from notchbook.blocks.skirts.halves import (
    SHORTEST_DART,
    DartLengths,
    Half,
    HalfMeasures,
    dart_demand,
    dart_lengths,
    draft_half,
)
from notchbook.blocks.skirts.hem import (
    MOST_FLARE,
    MOST_TAPER,
    PanelBelow,
    below_to_hem,
    estimated_lean,
    flared_below,
)
from notchbook.blocks.skirts.lengths import floor_notes, length_promise, with_usual_length
from notchbook.blocks.skirts.levels import Level, body_levels
from notchbook.blocks.skirts.room_above_hip import Roomier, with_room
from notchbook.blocks.skirts.straight_notes import CHECK, draft_notes, level_notes_of, yoke_notes
from notchbook.blocks.skirts.straight_pieces import back_piece, cut_data, expectations, front_piece, seams
from notchbook.body import Side
from notchbook.errors import DraftRefused, GeometryError
from notchbook.pattern import Expectation, Pattern, frozen_map
from notchbook.recipe import AmountText, Change, MeasureNeeds, StepContext, StepDefinition, StepParameters

DartCount = Literal["auto", 0, 1, 2, 3]

SMALLEST_DART = 8.0
"""mm; a smaller dart is not worth sewing: its intake goes to the other panel or to the side."""

ONE_DART = 28.0
TWO_DARTS = 64.0
"""mm of intake up to which one, and up to which two darts serve a panel.
Source: handbook practice (one to 25 mm, two to 50 mm, 40 to 50 mm at most each)."""

ONE_FRONT_DART = 25.0
"""mm of intake up to which one dart serves a front, whose darts are short: a wider one is steep.
Source: handbook practice (one to 25 mm)."""


FLARED_HEM = 10.0
"""Degrees of flare at each side from which the hem is turned as narrow as a flared skirt's. Own judgment."""


class SkirtParameters(StepParameters):
    """Eases, length, darts and hem of a straight skirt.

    Eases are whole girths (skirt 13-20 mm at the waist, 50-70 mm at the hip: published ease table).
    ``length`` runs at the center back from waist to hem.
    """

    waist_ease: AmountText = "15 mm"
    """Ease of the whole waist; 13 to 20 mm is usual."""
    hip_ease: AmountText = "50 mm"
    """Ease of the whole hip; 50 to 70 mm is usual."""
    length: AmountText = "60 cm"
    """From waist to hem at the center back; on a small body to the knee unless it is chosen."""
    front_darts: DartCount = "auto"
    """Darts in each half of the front; auto chooses once, on these measures."""
    back_darts: DartCount = "auto"
    """Darts in each half of the back; auto chooses once, on these measures."""
    front_dart_length: AmountText = "9/20 hip_depth"
    """Length of the front dart nearest to the center."""
    back_dart_length: AmountText = "2/3 hip_depth"
    """Length of the back dart nearest to the center; the next is a tenth shorter."""
    front_dart_widest: AmountText | None = "19 mm"
    """What a single front dart takes up at most; the rest goes to the back. Empty: no limit."""
    side_widest: AmountText | None = "3/20 hip_depth"
    """What front and back each take in at the side while the darts bear the rest. Empty: its share."""
    back_dart_widest: AmountText | None = "25 mm"
    """What each of two back darts is to take up at most; of what is more, sides and front darts share 8 mm.
    Empty: no limit."""
    center_back_lowered: AmountText = "7 mm"
    """How much lower the waist lies at the center back than at the center front; 5 to 10 mm is usual."""
    flare: Annotated[float, Field(ge=-MOST_TAPER, le=MOST_FLARE)] = 0.0
    """Degrees by which each side flares below the hip; below zero it tapers."""
    hem_girth: AmountText | None = None
    """The whole hem, instead of a flare in degrees."""
    yoke_depth: AmountText | None = None
    """How far below the waist a yoke would end; its line is drawn parallel to the waist."""


def settle(context: StepContext, parameters: SkirtParameters) -> SkirtParameters:
    """Write down the dart counts that serve the base measures, and the length of a small body."""
    parameters = with_usual_length(context, parameters)
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
    return _count(front, ONE_FRONT_DART), _count(back, ONE_DART)


def _count(intake: float, one: float) -> int:
    if intake < SMALLEST_DART:
        return 0
    if intake <= one:
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
        hip_lean=_lean_wanted(context, parameters, side, hip),
        front_dart_widest=None
        if parameters.front_dart_widest is None
        else context.positive(parameters.front_dart_widest, "front_dart_widest", side),
        side_widest=None
        if parameters.side_widest is None
        else context.positive(parameters.side_widest, "side_widest", side),
        back_dart_widest=None
        if parameters.back_dart_widest is None
        else context.positive(parameters.back_dart_widest, "back_dart_widest", side),
        back_drop=max(context.mm(parameters.center_back_lowered, side), 0.0),
    )


def _lean_wanted(context: StepContext, parameters: SkirtParameters, side: Side, hip: float) -> float:
    """How much the sides lean below the hip for the hem that is asked for, about, degrees."""
    if parameters.hem_girth is None:
        return parameters.flare
    hem = context.positive(parameters.hem_girth, "hem_girth", side)
    below = context.mm(parameters.length, side) - context.measure("hip_depth", side)
    return estimated_lean(hip, hem, below) if below > 0.0 else 0.0


def run(pattern: Pattern, context: StepContext, parameters: SkirtParameters) -> Change:
    """Draft the block into the pattern."""
    half, lift = _draft_side(context, parameters)
    _require_depth(context, half)
    length = context.positive(parameters.length, "length", "both")
    hem = half.back.height - length
    if hem >= 0.0:
        raise DraftRefused("skirt-above-hip", length=length, hip_depth=half.back.height)
    names = PanelNames(context.slug)
    below = _below(context, parameters, half, hem)
    yoke = _yoke_depth(context, parameters, half)
    front = front_piece(names, half.front, hem, drawn=below[0], yoke_depth=yoke).lifted(lift)
    back = back_piece(names, half.back, hem, drawn=below[1], yoke_depth=yoke).lifted(lift)
    drafted = pattern.with_pieces(front.piece, back.piece).with_seams(*seams(names))
    drafted = cut_data(drafted, names, half, {"waist": "waist", "hem": _hem_class(below[0])})
    groups = frozen_map({**pattern.groups, **front.groups(context.step), **back.groups(context.step)})
    girths = {
        "waist": (context.measure("waist_girth"), context.mm(parameters.waist_ease)),
        "hip": (context.measure("hip_girth"), half.hip - context.measure("hip_girth")),
    }
    return Change(
        pattern=replace(drafted, groups=groups),
        expectations=(
            *expectations(context.slug, girths),
            *_hem_promises(context, parameters, names, length),
        ),
        notes=(
            *draft_notes(names, half, girths["hip"][1] - context.mm(parameters.hip_ease)),
            *level_notes_of(names, half, _levels(context, context.side), _roomier(context, parameters)),
            *yoke_notes(context.slug, names, half, yoke),
            *floor_notes(CHECK, context, length, names.at("back", "hem")),
        ),
    )


def _below(
    context: StepContext, parameters: SkirtParameters, half: Half, hem: float
) -> tuple[PanelBelow | None, PanelBelow | None]:
    """Front and back below the hip where they flare or taper; None where they run straight down."""
    if parameters.hem_girth is not None:
        return below_to_hem(half, hem, context.positive(parameters.hem_girth, "hem_girth"))
    if parameters.flare == 0.0:
        return None, None
    try:
        return flared_below(half, hem, parameters.flare)
    except GeometryError as error:
        raise DraftRefused("skirt-flare-short", flare=parameters.flare, below=-hem) from error


def _hem_class(below: PanelBelow | None) -> str:
    """The class of the hem's allowance: straight and A-line skirts are turned wide."""
    if below is None:
        return "hem_skirt_straight"
    lean = below.side.tangent_at(0.0, "after").direction() - 90.0
    return "hem_skirt_flared" if lean > FLARED_HEM else "hem_skirt_straight"


def _yoke_depth(context: StepContext, parameters: SkirtParameters, half: Half) -> float | None:
    """Where a yoke would end, mm below the waist; refused below the hip line."""
    if parameters.yoke_depth is None:
        return None
    depth = context.positive(parameters.yoke_depth, "yoke_depth", "both")
    most = min(half.front.side.length, half.front.height, half.back.height)
    if depth >= most:
        raise DraftRefused("skirt-yoke-below-hip", depth=depth, most=most)
    return depth


def _hem_promises(
    context: StepContext, parameters: SkirtParameters, names: PanelNames, length: float
) -> Iterator[Expectation]:
    """The length, and the hem where it was asked for."""
    ends = (names.at("back", "waist_center"), names.at("back", "hem_center"))
    yield length_promise(names.whole("skirt_length"), length, ends)
    if parameters.hem_girth is not None:
        hems = tuple(names.at(which, "hem") for which in ("front", "back"))
        hem = context.positive(parameters.hem_girth, "hem_girth")
        yield Expectation(
            names.whole("hem_girth"), "", hems, 2, hem, 0.0, reason="the fullness that was asked for"
        )


def _levels(context: StepContext, side: Side) -> tuple[Level, ...]:
    """The girths between waist and hip that were measured on this side."""
    hip_depth = context.measure("hip_depth", side)
    return tuple(level for level in body_levels(context, 0.0, hip_depth, side) if level.depth < hip_depth)


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


def _draft_side(context: StepContext, parameters: SkirtParameters) -> tuple[Half, float]:
    """Draft this side, and how far it is lifted, mm; where the two sides differ, both get the same waist at
    the centers, whose height is the mean of what the two sides would have alone."""
    own = _given(context, parameters, context.side)
    half = draft_half(*own)
    if context.sides_are_alike():
        return half, 0.0
    other_side: Side = "left" if context.side == "right" else "right"
    other = _given(context, parameters, other_side)
    centers = shared_centers(half, draft_half(*other), _hip_step(context, other_side))
    shared = replace(own[0], front_height=centers.front_height, back_height=centers.back_height)
    return draft_half(shared, own[1]), centers.lift(context.side)


def _hip_step(context: StepContext, other: Side) -> float | None:
    """How far the other hip lies above this one over the floor, mm; None where that was not measured."""
    floors = [context.find("outside_leg", side) for side in (other, context.side)]
    if floors[0] is None or floors[1] is None:
        return None
    depths = [context.measure("hip_depth", side) for side in (other, context.side)]
    return (floors[0] - depths[0]) - (floors[1] - depths[1])


def _given(context: StepContext, parameters: SkirtParameters, side: Side) -> tuple[HalfMeasures, DartLengths]:
    """The measures and the dart lengths of one of the wearer's sides, with room made over a full high hip."""
    roomier = _roomier(context, parameters, side)
    return roomier.measures, roomier.lengths


def _roomier(context: StepContext, parameters: SkirtParameters, of_side: Side | None = None) -> Roomier:
    side = of_side or context.side
    if parameters.front_darts == "auto" or parameters.back_darts == "auto":
        raise DraftRefused("count-not-settled", step=context.step)
    front = max(context.mm(parameters.front_dart_length, side), SHORTEST_DART)
    back = max(context.mm(parameters.back_dart_length, side), SHORTEST_DART)
    lengths = DartLengths(
        dart_lengths(front, parameters.front_darts), dart_lengths(back, parameters.back_darts)
    )
    measures = half_measures(context, parameters, side)
    return with_room(measures, lengths, _levels(context, side), SHORTEST_DART)


def _as_drawn_before(parameters: dict[str, Any]) -> dict[str, Any]:
    """A skirt of the first version had front darts of any width and its centers at one height."""
    return {**parameters, "front_dart_widest": None, "center_back_lowered": "0 mm"}


def _with_wide_sides(parameters: dict[str, Any]) -> dict[str, Any]:
    """A skirt up to the second version took in its whole share at the sides."""
    return {**parameters, "side_widest": None}


def _with_wide_back_darts(parameters: dict[str, Any]) -> dict[str, Any]:
    """A skirt up to the third version had back darts of any width."""
    return {**parameters, "back_dart_widest": None}


STEP = StepDefinition(
    operation="skirt",
    version=4,
    kind="block",
    title="Draft skirt",
    sentence="waist ease {waist_ease}, hip ease {hip_ease}, length {length} at center back",
    parameters=SkirtParameters,
    run=run,
    upcasters={1: _as_drawn_before, 2: _with_wide_sides, 3: _with_wide_back_darts},
    needs=MeasureNeeds(
        needed=("waist_girth", "hip_girth", "hip_depth"),
        helpful=(
            "front_waist_arc",
            "front_hip_arc",
            "outside_leg",
            "front_waist_to_floor",
            "back_waist_to_floor",
            "top_hip_girth",
            "belly_girth",
            "belly_depth",
            "height",
        ),
    ),
    settle=settle,
    eases=usual_eases,
    refuses=(
        "skirt-waist-unreachable",
        "skirt-darts-too-wide",
        "skirt-above-hip",
        "skirt-side-short",
        "skirt-hip-depth-short",
        "skirt-hem-unreachable",
        "skirt-flare-short",
        "skirt-yoke-below-hip",
        "dart-misses-waist",
        "count-not-settled",
        "amount-not-positive",
    ),
)
