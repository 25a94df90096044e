"""A raglan: the sleeve reaches to the neck and takes the shoulder of front and back with it.

On front and back a line is drawn from the neck to the lower armhole. What lies over it is laid to the sleeve,
and the sleeve is parted down the middle of the arm. Below the line armhole and cap stay as they were drafted;
above it bodice and sleeve have one and the same line, so that the whole seam walks. It leaves armhole and cap
where both go on in its direction. The ease of the cap is gone: the round of the seam over the arm takes its
place.
"""

from collections.abc import Iterator
from typing import Literal

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Finding, Measured, Pattern, Severity, child_name, spoken, worded
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._ranged_amount import told_outside
from notchbook.style.sleeves.bodice import bodice_panel
from notchbook.style.sleeves.crossing import crosses
from notchbook.style.sleeves.figures import RAGLAN_ABOVE, RAGLAN_BACK, RAGLAN_FRONT
from notchbook.style.sleeves.found import FoundSleeve, sleeve_found
from notchbook.style.sleeves.raglan.joining import (
    raglan_gone,
    raglan_notches,
    raglan_seams,
    raglan_splits,
)
from notchbook.style.sleeves.raglan.laid import Laid, both_laid
from notchbook.style.sleeves.raglan.pieces import Half, half_of, with_dart
from notchbook.style.sleeves.raglan.taken import Panel, panel_of, require_inside

_APART = 8.0
"""mm that the ends of the shoulders lie apart at the least, so that the seam over the arm turns one way. Own
judgment."""

_HIGHER = 2.0
"""mm by which the shoulders are laid higher until they lie so far apart."""

_CLEAR = 1.0
"""mm off the middle of the arm within which both lines over it are one."""

_FAR = 2000.0
"""mm down within which the middle of the hem lies."""


class RaglanParameters(StepParameters):
    """The ``bodice`` and its ``sleeve``, where the lines end at the neck, and how the shoulder lies over the
    arm."""

    sleeve: Word = "sleeve"
    """The sleeve, drafted into the armhole and in one piece."""
    bodice: Word = "bodice"
    """The bodice whose shoulders the sleeve takes."""
    shoulder: Literal["seam", "dart"] = "seam"
    """The sleeve parted down the middle of the arm, or in one piece with a dart over the shoulder."""
    front_neck: AmountText = RAGLAN_FRONT.amount
    """How far down the front neck from the shoulder the line begins."""
    back_neck: AmountText = RAGLAN_BACK.amount
    """The same on the back."""
    above: AmountText | None = None
    """How far above the top of the cap the end of the shoulder lies: more gives room over the bone and lets
    the arm be lifted. Empty: 1 cm, and as much more as keeps the two shoulders from lapping."""


def run(pattern: Pattern, context: StepContext, parameters: RaglanParameters) -> Change:
    """Cut bodice and sleeve, lay the shoulders to the sleeve, sew them anew."""
    sleeve = sleeve_found(pattern, parameters.sleeve)
    if len(sleeve.cap) != 2 or not sleeve.piece.has_edge(sleeve.name("hem")):
        raise StepRefused("sleeve-in-parts", sleeve=spoken(sleeve.piece.name))
    downs = {"front": context.mm(parameters.front_neck), "back": context.mm(parameters.back_neck)}
    front = panel_of(pattern, bodice_panel(pattern, parameters.bodice, "front"), "front", downs["front"])
    back = panel_of(pattern, bodice_panel(pattern, parameters.bodice, "back"), "back", downs["back"])
    try:
        both = _laid(context, parameters, sleeve, front, back)
    except GeometryError as error:
        raise StepRefused("raglan-overarms-differ", sleeve=spoken(sleeve.piece.name)) from error
    for laid in both:
        require_inside(laid.panel, laid.line)
    halves = half_of(context.slug, sleeve, both[0]), half_of(context.slug, sleeve, both[1])
    after = pattern.with_pieces(halves[0].body, halves[1].body)
    is_parted = parameters.shoulder == "seam"
    if is_parted:
        after = after.with_pieces(halves[0].sleeve, halves[1].sleeve, without=(sleeve.piece.name,))
    else:
        whole, halves = with_dart(context.slug, sleeve, halves)
        if crosses(whole, [edge.name for edge in whole.outline]):
            raise StepRefused("raglan-dart-laps", sleeve=spoken(whole.name))
        after = after.with_pieces(whole)
    removals, notches = raglan_gone(pattern, sleeve, both)
    after = after.with_seams(*raglan_seams(pattern, context.slug, sleeve, halves))
    marks = raglan_notches(context.slug, sleeve, halves, is_parted=is_parted)
    after = after.with_notches(*marks, without=notches)
    asked = _asked(pattern, after, sleeve) | _of_sleeve(after, sleeve, both, is_parted=is_parted)
    return Change(
        after,
        splits=raglan_splits(sleeve, both, halves, is_parted=is_parted),
        removals=removals,
        asked=asked,
        notes=(*_told(both), *_unusual(context, parameters, halves)),
    )


def _laid(
    context: StepContext, parameters: RaglanParameters, sleeve: FoundSleeve, front: Panel, back: Panel
) -> tuple[Laid, Laid]:
    """Both shoulders laid; where no height was asked for, so high that they do not lap."""
    foot = _foot(sleeve)
    if parameters.above is not None:
        return both_laid(sleeve, front, back, context.not_negative(parameters.above, "above"), foot)
    above = RAGLAN_ABOVE.value
    both = both_laid(sleeve, front, back, above, foot)
    while _are_close(*both) and above + _HIGHER <= RAGLAN_ABOVE.most:
        above += _HIGHER
        both = both_laid(sleeve, front, back, above, foot)
    return both


def _are_close(front: Laid, back: Laid) -> bool:
    """Whether the ends of the shoulders lie too close, or their lines over the arm cross below them."""
    if front.over.start.x - back.over.start.x < _APART:
        return True
    met = front.over.intersections(back.over)
    return any(front.over.point_at(one.at_self).x > front.over.end.x + _CLEAR for one in met)


def _foot(sleeve: FoundSleeve) -> Point:
    """Where the middle of the arm, straight below the shoulder, meets the hem."""
    top = sleeve.line.point_at(sleeve.top)
    hem = sleeve.piece.edge(sleeve.name("hem")).path
    met = hem.intersections(Path.line(top, top - Point(0.0, _FAR)))
    return hem.point_at(met[0].at_self) if met else sleeve.piece.points[sleeve.name("hem_middle")]


def _asked(before: Pattern, after: Pattern, sleeve: FoundSleeve) -> dict[str, float]:
    """By how much the levels of the bodice are shorter, whose ends went with the shoulders, mm."""
    now = {line.name: line.path.length for piece in after.pieces.values() for line in piece.lines}
    found: dict[str, float] = {}
    for piece in before.pieces.values():
        for line in piece.lines if piece.name != sleeve.piece.name else ():
            change = now.get(line.name, line.path.length) - line.path.length
            if change:
                found[line.name] = change
    return found


def _of_sleeve(
    after: Pattern, sleeve: FoundSleeve, both: tuple[Laid, Laid], *, is_parted: bool
) -> dict[str, float]:
    """By how much levels and cap of the sleeve are shorter, mm: the cap ends where the raglan lines begin."""
    found = {
        child_name(cap.name, "below"): laid.up - cap.length
        for cap, laid in zip((sleeve.cap[0], sleeve.cap[-1]), both, strict=True)
    }
    halves = [line for piece in after.pieces.values() for line in piece.lines]
    for line in sleeve.piece.lines if is_parted else ():
        parts = {child_name(line.name, role) for role in ("back", "front")}
        now = sum(half.path.length for half in halves if half.name in parts)
        found[line.name] = now - line.path.length
    return found


def _told(both: tuple[Laid, Laid]) -> Iterator[Finding]:
    """How far apart the ends of the shoulders lie on the sleeve: what is sewn away there as by a dart."""
    front, back = (laid.over.start for laid in both)
    apart = front.x - back.x
    yield worded(
        STEP.operation,
        "raglan-shoulders-apart" if apart >= 0.0 else "raglan-shoulders-lap",
        Severity.NOTE,
        Measured(apart),
        apart=abs(apart),
        higher=back.y - front.y,
    )


def _unusual(
    context: StepContext, parameters: RaglanParameters, halves: tuple[Half, Half]
) -> Iterator[Finding]:
    """Amounts outside of what is usual."""
    front, back = (half.body.name for half in halves)
    amounts = [(front, "front_neck", parameters.front_neck, RAGLAN_FRONT)]
    amounts.append((back, "back_neck", parameters.back_neck, RAGLAN_BACK))
    if parameters.above is not None:
        amounts.append((front, "above", parameters.above, RAGLAN_ABOVE))
    for piece, field, amount, figure in amounts:
        yield from told_outside(STEP.operation, piece, field, context.mm(amount), figure)


STEP = StepDefinition(
    operation="raglan_sleeve",
    version=2,
    upcasters={1: dict},
    kind="style",
    title="Raglan sleeve",
    sentence="{sleeve} to the neck of {bodice}, {front_neck} down in front, {back_neck} behind",
    parameters=RaglanParameters,
    run=run,
)
