"""A sleeve cut on to the bodice, kimono or dolman: no armhole, one line over the arm and one under it.

Front and back hang at angles at which their lines under the arm are equally long. Under the arm they run into
the side seam in a curve, or a gusset is set into a slash there, so that the arm can be lifted from a sleeve
that hangs close.
"""

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    Cure,
    Finding,
    Measured,
    Pattern,
    Severity,
    frozen_map,
    part_name,
    piece_name,
    worded,
)
from notchbook.pattern.operation import Operation
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._ranged_amount import told_outside
from notchbook.style.sleeves.bodice import bodice_panel
from notchbook.style.sleeves.figures import GUSSET_ANGLE, KIMONO_ANGLE, KIMONO_ARM_EASE, KIMONO_HEM_EASE
from notchbook.style.sleeves.kimono.gusset import with_gusset
from notchbook.style.sleeves.kimono.joining import (
    CutOn,
    arm_notches,
    arm_seams,
    cut_on,
    side_notches,
    with_hems,
)
from notchbook.style.sleeves.kimono.lines import ArmLines, ArmSize, arm_lines, even_angle, slash_aside
from notchbook.style.sleeves.kimono.panel import ArmPanel, arm_panel

_LEAST = 40.0
"""mm below the underarm at which a cut-on sleeve meets the side seam at the least. Common practice, no
source."""

_CURVE = 50.0
"""mm; the curve under the arm where nothing is said. Common practice, no source."""

_SIDE_LEFT = 40.0
"""mm of the side seam that are left below it. Own judgment."""

_DEEPER = 5.0
"""mm by which it is drawn deeper until the arm has room."""


class KimonoParameters(StepParameters):
    """The ``bodice``, how the sleeve hangs, how long and wide it is, and what happens under the arm."""

    bodice: Word = "bodice"
    """The bodice that the sleeve is cut on to; no sleeve is set into its armhole yet."""
    angle: Annotated[float, Field(ge=KIMONO_ANGLE.least, le=KIMONO_ANGLE.most)] = KIMONO_ANGLE.value
    """Degrees by which the front sleeve hangs below the run of the shoulder seam: 0 lifts the arm freely, 25
    hangs close and asks for a gusset."""
    length: AmountText | None = None
    """From the shoulder point to the hem; empty: the arm length."""
    hem: AmountText | None = None
    """Girth of the hem; empty: the wrist with its ease."""
    depth: AmountText | None = None
    """How far below the underarm the sleeve meets the side seam; a dolman has 12 cm and more. Empty: 4 cm,
    and as much more as the arm asks for."""
    curve: AmountText | None = None
    """Size of the curve there; empty: 5 cm, less where the side seam is short; with a gusset there is none.
    """
    gusset: AmountText | None = None
    """Length of the sides of a gusset, 8 to 11 cm; empty: no gusset."""
    gusset_angle: Annotated[float, Field(ge=GUSSET_ANGLE.least, le=GUSSET_ANGLE.most)] = GUSSET_ANGLE.value
    """Degrees at its points in front and behind: the wider, the freer the arm."""


def run(pattern: Pattern, context: StepContext, parameters: KimonoParameters) -> Change:
    """Draw the sleeve on to front and back, and set a gusset in where one is asked for."""
    front, back = (
        arm_panel(pattern, bodice_panel(pattern, parameters.bodice, which)) for which in ("front", "back")
    )
    size, lines, angle = _drawn(context, parameters, front, back)
    cuts = cut_on(context.slug, front, lines[0]), cut_on(context.slug, back, lines[1])
    after = pattern.with_pieces(*(cut.piece for cut in cuts))
    gone = [notch.name for notch in pattern.notches.values() if notch.place.edge in _armholes(front, back)]
    moved = (*side_notches(pattern, front, lines[0]), *side_notches(pattern, back, lines[1]))
    after = after.with_notches(*arm_notches(context.slug, *cuts), *moved, without=gone)
    kept = {name: one for name, one in after.allowances.items() if name not in _armholes(front, back)}
    after = replace(after, allowances=frozen_map(kept))
    after = with_hems(after.with_seams(*arm_seams(context.slug, *cuts)), *cuts)
    if size.gusset > 0.0:
        after = with_gusset(after, context.slug, *cuts, parameters.gusset_angle)
        after = after.with_operations(*_order(context.slug, cuts))
    removals = dict.fromkeys([*_armholes(front, back), *gone], "the sleeve is cut on")
    notes = (
        *_told(context, parameters, (front, back), angle),
        *_arm_told(context, parameters, (front, back), _room(parameters, size, lines)),
    )
    return Change(after, removals=removals, notes=notes)


def _armholes(front: ArmPanel, back: ArmPanel) -> tuple[str, str]:
    return front.armhole.name, back.armhole.name


def _size(context: StepContext, parameters: KimonoParameters, side: float) -> ArmSize:
    """The sizes of the sleeve on a side seam so long, mm."""
    length = (
        context.measure("arm_length")
        if parameters.length is None
        else context.positive(parameters.length, "length")
    )
    if parameters.hem is None:
        hem = context.measure("wrist_girth") + KIMONO_HEM_EASE.value
    else:
        hem = context.positive(parameters.hem, "hem")
    gusset = 0.0 if parameters.gusset is None else context.positive(parameters.gusset, "gusset")
    depth = _LEAST if parameters.depth is None else context.positive(parameters.depth, "depth")
    if parameters.curve is None:
        curve = max(min(_CURVE, side - _SIDE_LEFT - depth), _DEEPER)
    else:
        curve = context.positive(parameters.curve, "curve")
    return ArmSize(length, hem / 2.0, depth, 0.0 if gusset > 0.0 else curve, gusset)


Drawn = tuple[ArmSize, tuple[ArmLines, ArmLines], float]
"""The sizes, the lines of front and back, and the angle of the back."""


def _drawn(context: StepContext, parameters: KimonoParameters, front: ArmPanel, back: ArmPanel) -> Drawn:
    """The sleeve drawn; deeper until the arm has room, where no depth was asked for."""
    arm = context.find("upper_arm_girth")
    shorter = min(front.side.length, back.side.length)
    drawn = _both(parameters, front, back, _size(context, parameters, shorter))
    if parameters.depth is not None or arm is None:
        return drawn
    while _room(parameters, drawn[0], drawn[1]) < arm + KIMONO_ARM_EASE.value:
        size = replace(drawn[0], depth=drawn[0].depth + _DEEPER)
        if size.depth + size.curve + size.aside > shorter - _SIDE_LEFT:
            break
        drawn = _both(parameters, front, back, size)
    return drawn


def _both(parameters: KimonoParameters, front: ArmPanel, back: ArmPanel, size: ArmSize) -> Drawn:
    """Both panels with the back hung so that their lines under the arm are equally long; StepRefused
    ``kimono-underarms-differ``."""
    try:
        angle = even_angle(front, back, parameters.angle, size)
    except GeometryError as error:
        raise StepRefused("kimono-underarms-differ", angle=parameters.angle) from error
    hung = (front, parameters.angle), (back, angle)
    if size.gusset > 0.0:
        size = replace(size, aside=max(slash_aside(panel, at, size) for panel, at in hung))
    return size, (arm_lines(*hung[0], size), arm_lines(*hung[1], size)), angle


def _room(parameters: KimonoParameters, size: ArmSize, lines: tuple[ArmLines, ArmLines]) -> float:
    """How wide the sleeve is all round where it leaves the body, mm, with the width of its gusset."""
    wide = 2.0 * size.gusset * math.cos(math.radians(parameters.gusset_angle) / 2.0)
    return sum(_across(one) for one in lines) + wide


def _order(slug: str, cuts: tuple[CutOn, CutOn]) -> Iterator[Operation]:
    """What is done before the slashes are cut, and which corner of the gusset goes where."""
    lines = [line.name for cut in cuts for line in cut.piece.lines if line.kind == "cut_line"]
    stayed = "Stay the points of the slashes for the gusset with a scrap of cloth before they are slit."
    yield Operation(part_name(slug, "gusset_stayed"), "prepare", stayed, tuple(lines))
    laid = (
        "Slit the slashes and pin the gusset in: along its grain its corners come to the seams of arm and "
        "side, across it to the points of the slashes."
    )
    closed = (part_name(slug, "underarm_seam"),)
    yield Operation(part_name(slug, "gusset_pinned"), "sleeves", laid, (piece_name(slug, "gusset"),), closed)


def _told(
    context: StepContext, parameters: KimonoParameters, panels: tuple[ArmPanel, ArmPanel], angle: float
) -> Iterator[Finding]:
    """How the back hangs, and an unusual hem."""
    yield worded(
        STEP.operation,
        "kimono-back-angle",
        Severity.NOTE,
        Measured(angle, None, "deg"),
        piece=panels[1].piece.name,
        angle=angle,
    )
    wrist = context.find("wrist_girth")
    if parameters.hem is not None and wrist is not None:
        more = context.mm(parameters.hem) - wrist
        yield from told_outside(
            STEP.operation, panels[0].piece.name, "hem over the wrist", more, KIMONO_HEM_EASE
        )


def _arm_told(
    context: StepContext, parameters: KimonoParameters, panels: tuple[ArmPanel, ArmPanel], room: float
) -> Iterator[Finding]:
    """A sleeve that is close round the arm; one that the arm does not go into stops the papers."""
    arm = context.find("upper_arm_girth")
    if arm is None or room >= arm + KIMONO_ARM_EASE.value:
        return
    freer = _freer_angle(context, parameters, panels)
    cures = () if freer is None else (Cure(context.slug, "angle", freer, f"hang it at {freer:g} degrees"),)
    yield worded(
        STEP.operation,
        "kimono-arm-tight" if room < arm else "kimono-arm-close",
        Severity.STOP if room < arm else Severity.LOOK,
        Measured(room, arm + KIMONO_ARM_EASE.value),
        piece=panels[0].piece.name,
        cures=cures,
        room=room,
        arm=arm,
    )


def _freer_angle(
    context: StepContext, parameters: KimonoParameters, panels: tuple[ArmPanel, ArmPanel]
) -> float | None:
    """The steepest angle, in whole degrees, at which the arm has room; None where none gives it."""
    arm = context.measure("upper_arm_girth")
    for angle in range(math.ceil(parameters.angle) - 1, round(KIMONO_ANGLE.least) - 1, -1):
        other = parameters.model_copy(update={"angle": float(angle)})
        try:
            size, lines, _ = _drawn(context, other, *panels)
        except StepRefused:
            continue
        if _room(other, size, lines) >= arm + KIMONO_ARM_EASE.value:
            return float(angle)
    return None


def _across(lines: ArmLines) -> float:
    """How wide half the sleeve is where it leaves the body or at the point of its slash, square to the line
    over the arm, mm."""
    inner = lines.slash or lines.under.point_at(lines.under.distances[1])
    return Path(lines.over.segments).nearest(inner).gap


STEP = StepDefinition(
    operation="kimono_sleeve",
    version=1,
    kind="style",
    title="Kimono sleeve",
    sentence="cut on to {bodice}, hanging {angle} degrees, meeting the side {depth} lower, gusset {gusset}",
    parameters=KimonoParameters,
    run=run,
)
