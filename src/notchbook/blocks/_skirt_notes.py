"""What the skirt draft has to say of itself: closed is not yet good."""

from collections.abc import Iterator

from notchbook.blocks._closed_waist import Panel
from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._skirt_halves import LEAST_SIDE_TAKE_IN, Half
from notchbook.blocks._skirt_pieces import DART_ROLES
from notchbook.pattern import Finding, Measured, Severity, part_name, spoken, worded

_CHECK = "skirt-draft"
"""The name under which the draft speaks."""

WIDEST_DART = 40.0
"""mm; a wider dart makes a point that stands away (handbook practice: 40 to 50 at most)."""

HIGHEST_RISE = 18.0
"""mm; a waist that rises more from center to side shows as an ear (patternmaker's review)."""

MEASURED_FLATNESS = (0.55, 1.1)
"""The range in which measured heights at the centers and the side agree with a smooth waistline."""


WAIST_HEIGHT = 0.63
"""Height of the natural waist over the floor as a share of stature (surveyed women: data/survey/ansur)."""

LONGEST_SKIRT = 1150.0
"""mm; the floor of a tall body, for bodies without a height. Common practice, no source."""


def length_notes(names: PanelNames, length: float, floor: float) -> tuple[Finding, ...]:
    """A skirt that would lie on the floor; ``floor`` is the way from the waist to it, mm."""
    if length <= floor:
        return ()
    hem = names.at("back", "hem")
    return (worded(_CHECK, "skirt-on-the-floor", Severity.LOOK, Measured(length, floor), where=hem),)


def draft_notes(names: PanelNames, half: Half, hip_raised_by: float) -> tuple[Finding, ...]:
    """Findings of the draft: levers at their limits, forced shapes, cures that were taken."""
    return tuple(_notes(names, half, -hip_raised_by))


def _notes(names: PanelNames, half: Half, raised: float) -> Iterator[Finding]:
    if raised > 0.05:
        yield worded(_CHECK, "hip-ease-raised", Severity.LOOK, Measured(raised, 0.0))
    elif half.take_in <= LEAST_SIDE_TAKE_IN / 2.0:
        seam = names.side_seam
        yield worded(_CHECK, "side-leans-out", Severity.LOOK, Measured(-half.take_in, 0.0), where=seam)
    for which, panel in (("front", half.front), ("back", half.back)):
        yield from _panel_notes(names, which, panel)


def _panel_notes(names: PanelNames, which: str, panel: Panel) -> Iterator[Finding]:
    name = names.piece(which)
    for index, role in enumerate(DART_ROLES[len(panel.points)]):
        dart = part_name(name, role)
        intake = panel.intake(index)
        if intake > WIDEST_DART:
            amount = Measured(intake, WIDEST_DART)
            yield worded(
                _CHECK, "dart-wide", Severity.LOOK, amount, piece=name, where=dart, dart=spoken(dart)
            )
    low, high = MEASURED_FLATNESS
    waist = part_name(name, "waist")
    code, amount = "", Measured()
    if panel.rise > HIGHEST_RISE:
        code, amount = "side-rises", Measured(panel.rise, HIGHEST_RISE)
    elif not low <= panel.flatness <= high:
        wanted = low if panel.flatness < low else high
        code, amount = "center-heights-disagree", Measured(panel.flatness, wanted, "")
    if code:
        yield worded(_CHECK, code, Severity.LOOK, amount, piece=name, where=waist, panel=spoken(name))
