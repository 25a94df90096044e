"""What the skirt draft has to say of itself: closed is not yet good."""

from collections.abc import Iterator

from notchbook.blocks._closed_waist import Panel
from notchbook.blocks._skirt_halves import LEAST_SIDE_TAKE_IN, Half
from notchbook.blocks._skirt_pieces import DART_ROLES
from notchbook.pattern import Finding, Severity, part_name, piece_name, spoken

WIDEST_DART = 40.0
"""mm; a wider dart makes a point that stands away (handbook practice: 40 to 50 at most)."""

HIGHEST_RISE = 18.0
"""mm; a waist that rises more from center to side shows as an ear (patternmaker's review)."""

MEASURED_FLATNESS = (0.55, 1.1)
"""The range in which measured heights at the centers and the side agree with a smooth waistline."""


def draft_notes(slug: str, half: Half, hip_raised_by: float) -> tuple[Finding, ...]:
    """Findings of the draft: levers at their limits, forced shapes, cures that were taken."""
    return tuple(_notes(slug, half, -hip_raised_by))


def _notes(slug: str, half: Half, raised: float) -> Iterator[Finding]:
    if raised > 0.05:
        yield Finding(
            "skirt-draft",
            "hip-ease-raised",
            Severity.LOOK,
            f"The waist is larger than the hip: {raised:.0f} mm were added to the hip ease so that the "
            "side seam does not lean out further.",
            measured=raised,
            wanted=0.0,
            suggestion="Measure the belly girth and how far below the waist it lies.",
        )
    elif half.take_in <= LEAST_SIDE_TAKE_IN / 2.0:
        yield Finding(
            "skirt-draft",
            "side-leans-out",
            Severity.LOOK,
            f"The side seam leans out by {-half.take_in:.0f} mm to the waist.",
            where=part_name(slug, "side_seam"),
            measured=-half.take_in,
            wanted=0.0,
            suggestion="Measure the belly girth and how far below the waist it lies.",
        )
    for which, panel in (("front", half.front), ("back", half.back)):
        yield from _panel_notes(slug, which, panel)


def _panel_notes(slug: str, which: str, panel: Panel) -> Iterator[Finding]:
    name = piece_name(slug, which)
    roles = DART_ROLES[len(panel.points)]
    for index, role in enumerate(roles):
        intake = panel.intake(index)
        if intake > WIDEST_DART:
            yield Finding(
                "skirt-draft",
                "dart-wide",
                Severity.LOOK,
                f"{spoken(part_name(name, role))} takes up {intake:.1f} mm; its point will stand away.",
                piece=name,
                where=part_name(name, role),
                measured=intake,
                wanted=WIDEST_DART,
                suggestion="Draft with one dart more in this panel.",
            )
    low, high = MEASURED_FLATNESS
    if panel.rise > HIGHEST_RISE:
        yield Finding(
            "skirt-draft",
            "side-rises",
            Severity.LOOK,
            f"{spoken(name)}: the waist rises {panel.rise:.0f} mm from the center to the side.",
            piece=name,
            where=part_name(name, "waist"),
            measured=panel.rise,
            wanted=HIGHEST_RISE,
            suggestion="Look at the waist in muslin; lower the side or divide the intake over more darts.",
        )
    elif not low <= panel.flatness <= high:
        yield Finding(
            "skirt-draft",
            "center-heights-disagree",
            Severity.LOOK,
            f"{spoken(name)}: the measured heights of center and side force the waistline.",
            piece=name,
            where=part_name(name, "waist"),
            measured=panel.flatness,
            wanted=low if panel.flatness < low else high,
            unit="",
            suggestion="Measure the lengths to the floor at center and side again from one waist tape.",
        )
