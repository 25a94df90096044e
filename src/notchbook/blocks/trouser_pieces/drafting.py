"""Drafting trousers: choices settled, one leg drafted so that it meets the other."""

from dataclasses import replace

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.legs.attainable import usual_crotch, well_shaped_crotch
from notchbook.blocks.legs.dart_counts import count_darts
from notchbook.blocks.legs.draft import draft_trousers
from notchbook.blocks.legs.given import LevelGirth, TrousersGiven
from notchbook.blocks.legs.lower_waist import girth_below, lowered
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.shapes import TrouserPanel
from notchbook.blocks.trouser_pieces.body_reader import wearer_of
from notchbook.blocks.trouser_pieces.leg_widths import length_of
from notchbook.blocks.trouser_pieces.parameters import TrousersParameters
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.blocks.trouser_pieces.refusals import CROTCH_CODES, explained, reachable, wider_shape
from notchbook.blocks.trouser_pieces.trouser_measures import TrouserMeasures, is_flat, trouser_measures
from notchbook.body import Side
from notchbook.errors import DraftRefused
from notchbook.recipe import StepContext
from notchbook.units import TOLERANCES

_CHOICES = ("wearer", "length", "front_shape", "front_darts", "back_darts")
"""What ``auto`` may stand for; written down when the step is added."""

_HAIR = 0.01
"""mm: a tenth of a closure."""


def settle_trousers(context: StepContext, parameters: TrousersParameters) -> TrousersParameters:
    """Write down every choice that was left to auto, on the base measures."""
    flat = is_flat(parameters, context.measures)
    chosen = parameters.model_copy(
        update={
            "wearer": wearer_of(parameters, context.measures),
            "length": length_of(parameters),
            "front_shape": "flat" if flat else "darts",
        }
    )
    given = from_edge(trouser_measures(context, chosen, context.side))
    front, back = count_darts(given)
    counted = {"front_darts": 0 if flat else front, "back_darts": back}
    left_open = [name for name in counted if getattr(chosen, name) == "auto"]
    chosen = chosen.model_copy(update={name: counted[name] for name in left_open})
    if not left_open or chosen.narrow_darts == "sewn":
        return chosen
    sewn = _sewn_darts(context, chosen)
    return chosen.model_copy(update={name: sewn[name] for name in left_open if name in sewn})


def _sewn_darts(context: StepContext, chosen: TrousersParameters) -> dict[str, int]:
    """How many of the counted darts are worth their sewing; nothing where the body cannot be drafted."""
    try:
        half = _draft(context, PanelNames(context.slug), trouser_measures(context, chosen, context.side)).half
    except DraftRefused:
        return {}
    panels = {"front_darts": half.front, "back_darts": half.back}
    return {name: sum(intake > _HAIR for intake in panel.intakes) for name, panel in panels.items()}


def from_edge(measures: TrouserMeasures) -> TrousersGiven:
    """What the numbers take, running from the upper edge.

    DraftRefused ``trousers-waist-drop`` where that would lie on the hip or below, or over the waist.
    """
    drop, given = measures.drop, measures.given
    if drop < 0.0:
        most = given.hip_depth - proportion("waist.least_above_hip")
        raise DraftRefused("trousers-waist-drop", drop=drop, most=most, hip_depth=given.hip_depth)
    ease = measures.eases["waist"].value
    levels = (
        LevelGirth(measures.body["waist_girth"], 0.0),
        *(LevelGirth(level.girth - ease, level.depth) for level in given.between),
        LevelGirth(measures.body["hip_girth"], given.hip_depth),
    )
    if drop > 0.0:
        given = lowered(given, drop, girth_below(levels, drop) + ease)
    return replace(given, crotch=usual_crotch(given)) if measures.crotch_falls else given


def draft_leg(context: StepContext, parameters: TrousersParameters, names: PanelNames) -> Drafted:
    """This leg of the wearer; where the two differ, both get crotch seams of one length in front and behind.

    DraftRefused: ``choices-not-settled``, ``trousers-waist-drop`` and what the numbers refuse.
    """
    _require_settled(context, parameters)
    own = trouser_measures(context, parameters, context.side)
    drafted = _draft(context, names, own)
    if context.sides_are_alike():
        return drafted
    other_side: Side = "left" if context.side == "right" else "right"
    other = _draft(context, names, trouser_measures(context, parameters, other_side))
    return _meeting(drafted, other)


def _draft(context: StepContext, names: PanelNames, measures: TrouserMeasures) -> Drafted:
    """A leg by itself. A crotch length that nobody took yields to what can be drafted in good shape."""
    given = from_edge(measures)
    try:
        if not measures.is_crotch_taken and not measures.crotch_falls:
            given = replace(given, crotch=well_shaped_crotch(given))
        return _drafted(names, given, measures)
    except DraftRefused as refused:
        if refused.code in CROTCH_CODES and not measures.is_crotch_taken:
            return _drafted(names, replace(given, crotch=_just_within(refused)), measures)
        raise explained(refused, measures, context.slug) from refused


def _just_within(refused: DraftRefused) -> float:
    """The nearest crotch seam, a hair within its limit, mm: there the levers still move."""
    inward = -_HAIR if refused.code == "trousers-crotch-long" else _HAIR
    return reachable(refused) + inward


def _drafted(names: PanelNames, given: TrousersGiven, measures: TrouserMeasures) -> Drafted:
    half = draft_trousers(given)
    return Drafted(names, half, given, measures, (_curve(half.front), _curve(half.back)))


def _curve(panel: TrouserPanel) -> float:
    """The way from the crotch point up to where the crotch seam becomes straight, mm."""
    return panel.crotch.length - panel.crotch.segments[0].length


def _meeting(own: Drafted, other: Drafted) -> Drafted:
    """This leg drafted with the crotch seams that serve both: the mean of what each would have alone."""
    if own.given == other.given:
        return own
    front = (own.half.front.crotch.length + other.half.front.crotch.length) / 2.0
    back = (own.half.back.crotch.length + other.half.back.crotch.length) / 2.0
    # The whole comes from what both were asked for, so that a leg drawn otherwise breaks its promise.
    whole = (own.given.crotch + other.given.crotch) / 2.0
    given = replace(own.given, crotch=whole, front_crotch=front, back_crotch=back)
    shared = draft_trousers(replace(given, is_split_fixed=True))
    apart = abs(shared.front.crotch.length - front)
    if apart > TOLERANCES.closure / 2.0:
        cures = (wider_shape(own.names.slug),) if given.crotch_limits == "usual" else ()
        raise DraftRefused("trousers-sides-apart", apart=apart, front=front, cures=cures)
    front_notch, back_notch = ((one + two) / 2.0 for one, two in zip(own.notches, other.notches, strict=True))
    more = (front - own.half.front.crotch.length, back - own.half.back.crotch.length)
    return replace(own, half=shared, given=given, notches=(front_notch, back_notch), shared=more)


def _require_settled(context: StepContext, parameters: TrousersParameters) -> None:
    left_open = [name for name in _CHOICES if getattr(parameters, name) == "auto"]
    if left_open:
        raise DraftRefused("choices-not-settled", step=context.step, choices=", ".join(left_open))
