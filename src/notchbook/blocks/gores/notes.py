"""What the gored skirt has to say of itself."""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.blocks.gores.draft import draft_gores, girth_at
from notchbook.blocks.gores.given import GoresGiven
from notchbook.blocks.gores.shapes import GoresSide
from notchbook.blocks.skirts.figures import skirt_figure
from notchbook.blocks.skirts.levels import UNSEEN, Level, hip_ease_cure, level_notes, tight_levels
from notchbook.pattern import Cure, Finding, Measured, Severity, worded

CHECK = "gored-skirt-draft"
"""The name under which the draft speaks."""

MOST_TAKE_IN = 40.0
"""mm that one seam edge takes in between hip and waist before it is looked at: the hip curve of a straight
skirt bears 48 (common practice, no source); a skirt has only two of those. Own judgment."""

MOST_GORES = 12
"""More seams than that make a skirt stiff, and no gore has a name beyond them. Own judgment."""

LIKELY_TIGHT = 10.0
"""mm by which a skirt is narrower than a likely girth before that is looked at: the girth is no surer. Own
judgment."""

STEP_OF_GIRTH = 5.0
"""mm to which a likely girth is rounded: it is no closer."""


def shape_notes(
    slug: str, given: GoresGiven, side: GoresSide, levels: tuple[Level, ...], seam: str
) -> Iterator[Finding]:
    """Seams that take in much, and levels of the body that the skirt is tight over; ``seam`` is where."""
    if side.take_in > MOST_TAKE_IN:
        more = given.seam_edges + 2
        cures = (Cure(slug, "gores", more, f"draft {more} gores"),) if more <= MOST_GORES else ()
        amount = Measured(side.take_in, MOST_TAKE_IN)
        yield worded(CHECK, "gore-takes-in-much", Severity.LOOK, amount, where=seam, cures=cures)
    tight = tight_levels(levels, lambda depth: girth_at(side, depth))

    def room(more: float) -> float:
        drawn = draft_gores(_wider(given, more))
        return min(girth_at(drawn, one.depth) - one.girth - one.ease for one in above_hip)

    yield from _unmeasured_note(given, side, levels, seam)
    above_hip = [level for level in levels if level.depth < given.hip_depth]
    wider = hip_ease_cure(slug, room) if tight and above_hip else ()
    yield from level_notes(CHECK, tight, seam, lambda _: wider)


def _unmeasured_note(
    given: GoresGiven, side: GoresSide, levels: tuple[Level, ...], seam: str
) -> Iterator[Finding]:
    """What a top hip that was not measured may ask of the seams, which run straight to the waist without it.

    It is likely only, so that nothing is drawn after it.
    """
    if any(level.key == "top_hip_girth" for level in levels):
        return
    depth = skirt_figure("level.high_hip") * given.hip_depth
    width = girth_at(side, depth)
    likely = STEP_OF_GIRTH * round(_likely_high_hip(given) / STEP_OF_GIRTH)
    wanted = likely + skirt_figure("ease.over_high_hip")
    if wanted - width <= UNSEEN:
        return
    yield worded(
        CHECK,
        "top-hip-not-measured",
        Severity.NOTE if width > likely - LIKELY_TIGHT else Severity.LOOK,
        Measured(width, wanted),
        where=seam,
        depth=depth,
        likely=likely,
        out=(wanted - width) / 2.0 / given.seam_edges,
    )


def _likely_high_hip(given: GoresGiven) -> float:
    """The top hip that a body of this waist and hip is likely to have, mm."""
    return given.body_waist + skirt_figure("level.likely_high_hip") * (given.body_hip - given.body_waist)


def _wider(given: GoresGiven, more: float) -> GoresGiven:
    """The same with so much more ease at the hip, mm."""
    share = 1.0 + more / given.hip
    gores = tuple(replace(gore, half=share * gore.half) for gore in given.gores)
    return replace(given, hip=given.hip + more, gores=gores)
