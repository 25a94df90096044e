"""Drafting a block that hangs from the shoulders: choices settled, a side drafted, put into the pattern."""

from dataclasses import dataclass, replace
from typing import TypeVar, get_args

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.back_panel import back_panel
from notchbook.blocks.bodice_pieces.below_waist import ROUNDED
from notchbook.blocks.bodice_pieces.bodice_measures import (
    BodiceMeasures,
    back_shoulder_of,
    bodice_measures,
    has_bust_shaping,
    trusted_measures,
    wearer_of,
)
from notchbook.blocks.bodice_pieces.cups import point_distance
from notchbook.blocks.bodice_pieces.cut_data import cut_data, seams
from notchbook.blocks.bodice_pieces.dart_places import FROM_WAIST
from notchbook.blocks.bodice_pieces.draft_notes import draft_notes
from notchbook.blocks.bodice_pieces.eases import Layer
from notchbook.blocks.bodice_pieces.front_panel import FrontDarts, front_panel
from notchbook.blocks.bodice_pieces.hip_panel import hip_panel
from notchbook.blocks.bodice_pieces.outline import draw_piece
from notchbook.blocks.bodice_pieces.parameters import UpperParameters
from notchbook.blocks.bodice_pieces.promises import Drafted, promises
from notchbook.blocks.bodice_pieces.two_sides import draft_side
from notchbook.blocks.upper.bust_line import bust_line
from notchbook.blocks.upper.kept_bodice import kept_bodice
from notchbook.blocks.upper.shapes import BodiceHalf
from notchbook.blocks.upper.suppression import dart_counts
from notchbook.blocks.upper_measures import Trusted, contradiction_notes
from notchbook.errors import DraftRefused
from notchbook.pattern import Pattern, frozen_map
from notchbook.recipe import Change, StepContext
from notchbook.units import TOLERANCES

ParametersT = TypeVar("ParametersT", bound=UpperParameters)

UPPER_REFUSES = (
    "bodice-no-arm-room",
    "bodice-arm-room-wide",
    "bodice-underarm-low",
    "bodice-armhole-corner",
    "bodice-armhole-over-dart",
    "bodice-neck-unreachable",
    "bodice-neck-depth",
    "bodice-bust-point-far",
    "bodice-bust-point-low",
    "bodice-bust-point-wide",
    "bodice-front-too-long",
    "bodice-shoulder-against-width",
    "bodice-shoulder-below-underarm",
    "bodice-shoulder-raised",
    "bodice-side-too-short",
    "bodice-waist-dart-short",
    "bodice-waist-darts-too-wide",
    "bodice-waist-unreachable",
)
"""The codes with which the numbers refuse a body."""

CLEAR_OF_ROUNDING = 15.0
"""mm of side seam between the rounded waist and a dart: the stretch along which the edge is trued."""

TOP_HEM = "hem_top"
"""The allowance class of a hem of tops and dresses that end at the hip."""

_OVER_HEM = "hem_jacket"
"""The allowance class of a hem of jackets and coats."""

_CHOICES = ("wearer", "bust_shaping", "front_darts", "back_darts", "back_shoulder", "contour")
"""What ``auto`` may stand for; written down when the step is added."""


@dataclass(frozen=True, slots=True)
class LowerEnd:
    """Where the block ends: how far below the waist at the center back, mm (None: at the hip, or at the
    waist where the panels end there), and the allowance class of its lower edge ("": a seam of the block
    gives it)."""

    length: float | None = None
    allowance_class: str = TOP_HEM


def settle_upper(context: StepContext, parameters: ParametersT) -> ParametersT:
    """Write down every choice that was left to auto, on the base measures."""
    measures = context.measures
    is_shaped = has_bust_shaping(parameters, measures)
    chosen = parameters.model_copy(
        update={
            "wearer": wearer_of(parameters, measures),
            "bust_shaping": "dart" if is_shaped else "none",
            "back_shoulder": back_shoulder_of(parameters, measures),
        }
    )
    trusted = trusted_measures(context)
    chosen = _with_dart_counts(context, chosen, trusted)
    if chosen.contour != "auto":
        return chosen
    return chosen.model_copy(update={"contour": _contour(context, chosen, trusted)})


def _with_dart_counts(context: StepContext, parameters: ParametersT, trusted: Trusted) -> ParametersT:
    """The counts that serve the base measures, where they were left to auto."""
    counts = dart_counts(bodice_measures(context, parameters, context.side, trusted).given)
    written = (parameters.front_darts, parameters.back_darts)
    front, back = (count if asked == "auto" else asked for count, asked in zip(counts, written, strict=True))
    return parameters.model_copy(update={"front_darts": front, "back_darts": back})


def _contour(context: StepContext, parameters: UpperParameters, trusted: Trusted) -> str:
    """A dart in the neck where the base measures ask for one; a body that is refused asks for none."""
    if parameters.bust_shaping == "none":
        return "none"
    try:
        half = kept_bodice(bodice_measures(context, parameters, context.side, trusted).given)
    except DraftRefused:
        return "none"
    return "dart" if half.contour > TOLERANCES.closure else "none"


def draft_upper(
    context: StepContext, parameters: UpperParameters, names: PanelNames, end: LowerEnd
) -> Drafted:
    """One side of the block, its pieces named.

    DraftRefused: ``choices-not-settled``, ``bust-dart-needs-a-waist-seam``, ``hem-above-hip``, and the codes
    of UPPER_REFUSES.
    """
    _require_settled(context, parameters)
    half, hip, measures = draft_side(context, parameters, end.length)
    line = bust_line(half)
    darts = _front_darts(half, measures, parameters)
    front = front_panel(half.front, darts, line.front_side)
    back = back_panel(half.back, line.back_side)
    if hip is not None:
        front, back = hip_panel(front, half.front, hip.front), hip_panel(back, half.back, hip.back)
    return Drafted(
        names,
        half,
        measures,
        draw_piece(names, front, center_is_seam=_opens_center(parameters)),
        draw_piece(names, back),
        hip,
        darts.bust_dart,
    )


def upper_change(
    pattern: Pattern, context: StepContext, parameters: UpperParameters, drafted: Drafted, end: LowerEnd
) -> Change:
    """The drafted side put into the pattern with its seams, notches, closures and notes."""
    given = drafted.measures.given
    ease = given.back_shoulder_amount if given.back_shoulder == "ease" else 0.0
    after = pattern.with_pieces(drafted.front.piece, drafted.back.piece).with_seams(
        *seams(drafted.names, ease, center_front_is_seam=_opens_center(parameters))
    )
    groups = {**drafted.front.groups(context.step), **drafted.back.groups(context.step)}
    after = replace(after, groups=frozen_map({**pattern.groups, **groups}))
    return Change(
        pattern=cut_data(after, drafted.names, drafted.half, drafted.hip, _edge_class(parameters, end)),
        expectations=promises(drafted),
        notes=(
            *contradiction_notes(drafted.names.piece("front"), drafted.measures.trusted),
            *draft_notes(drafted),
        ),
    )


def _edge_class(parameters: UpperParameters, end: LowerEnd) -> str:
    """The allowance class of the lower edge; the hem of what is worn over others is turned deeper."""
    is_over = parameters.silhouette in get_args(Layer)
    return _OVER_HEM if is_over and end.allowance_class == TOP_HEM else end.allowance_class


def _opens_center(parameters: UpperParameters) -> bool:
    return parameters.bust_shaping == "dart" and parameters.bust_dart == "center_front"


def _require_settled(context: StepContext, parameters: UpperParameters) -> None:
    if open_choices := tuple(name for name in _CHOICES if getattr(parameters, name) == "auto"):
        raise DraftRefused("choices-not-settled", step=context.step, choices=open_choices)
    is_in_waist = (parameters.bust_shaping, parameters.bust_dart) == ("dart", "waist")
    if is_in_waist and not parameters.has_waist_seam:
        raise DraftRefused("bust-dart-needs-a-waist-seam")


def _front_darts(half: BodiceHalf, measures: BodiceMeasures, parameters: UpperParameters) -> FrontDarts:
    body, is_shaped = measures.body, measures.given.bust_shape is not None
    short = point_distance(body["bust_girth"], body.get("under_bust_girth"), body.get("upper_bust_girth"))
    return FrontDarts(
        parameters.bust_dart if is_shaped else None,
        has_contour_dart=is_shaped and parameters.contour == "dart",
        contour=max(half.contour, 0.0),
        short_by=short.short_by,
        from_waist=FROM_WAIST if parameters.has_waist_seam else ROUNDED + CLEAR_OF_ROUNDING,
    )
