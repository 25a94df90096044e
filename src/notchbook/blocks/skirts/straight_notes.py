"""What the skirt draft has to say of itself: closed is not yet good."""

from collections.abc import Iterator
from math import floor

from notchbook.blocks._closed_waist import Panel
from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._waist_edges import DART_ROLES
from notchbook.blocks.skirts.halves import LEAST_SIDE_TAKE_IN, SHORTEST_DART, Half
from notchbook.blocks.skirts.levels import UNSEEN, Level, hip_ease_cure, level_notes, tight_levels
from notchbook.blocks.skirts.room_above_hip import Roomier, girth_at, most_room
from notchbook.blocks.skirts.yoke import crossed_darts
from notchbook.pattern import Cure, Finding, Measured, Severity, part_name, spoken, worded

CHECK = "skirt-draft"
"""The name under which the draft speaks."""

WIDEST_DART = 40.0
"""mm; a wider dart makes a point that stands away (handbook practice: 40 to 50 at most)."""

HIGHEST_RISE = 18.0
"""mm; a waist that rises more from center to side shows as an ear (patternmaker's review)."""

ABOVE_YOKE = 2.0
"""mm by which darts end above a yoke line that is to be cut. Own judgment."""

MEASURED_FLATNESS = (0.55, 1.1)
"""The range in which measured heights at the centers and the side agree with a smooth waistline."""


def draft_notes(names: PanelNames, half: Half, raised: float) -> tuple[Finding, ...]:
    """Findings of the draft: levers at their limits, forced shapes. ``raised``: by how much the hip has more
    ease than was asked for, mm."""
    return tuple(_notes(names, half, raised))


def _notes(names: PanelNames, half: Half, raised: float) -> Iterator[Finding]:
    if raised > 0.05:
        yield worded(CHECK, "hip-ease-raised", Severity.LOOK, Measured(raised, 0.0))
    elif half.take_in <= LEAST_SIDE_TAKE_IN / 2.0:
        seam = names.side_seam
        yield worded(CHECK, "side-leans-out", Severity.LOOK, Measured(-half.take_in, 0.0), where=seam)
    yield from _panel_notes(names, "front", half.front)
    yield from _panel_notes(names, "back", half.back, half.back_drop)


def level_notes_of(
    names: PanelNames, half: Half, levels: tuple[Level, ...], roomier: Roomier
) -> Iterator[Finding]:
    """What was done to pass over a full high hip or belly, and where the skirt is too tight all the same."""

    def room(more: float) -> float:
        return most_room(roomier.measures, roomier.lengths, levels, SHORTEST_DART, more)

    if roomier.shortened > UNSEEN:
        yield worded(
            CHECK,
            "darts-shortened",
            Severity.NOTE,
            Measured(roomier.shortened),
            where=names.at("back", "waist"),
        )
    if roomier.is_rounder:
        yield worded(CHECK, "side-made-rounder", Severity.NOTE, where=names.side_seam)
    tight = tight_levels(levels, lambda depth: girth_at(half, depth))
    cures = hip_ease_cure(names.slug, room) if tight else ()
    yield from level_notes(CHECK, tight, names.side_seam, lambda _: cures)


def yoke_notes(slug: str, names: PanelNames, half: Half, depth: float | None) -> Iterator[Finding]:
    """Panels whose darts reach below the yoke line, each with the length that would not."""
    if depth is None:
        return
    for which, panel in (("front", half.front), ("back", half.back)):
        if not crossed_darts(panel, depth):
            continue
        shorter = float(floor(depth - ABOVE_YOKE))
        cure = Cure(slug, f"{which}_dart_length", f"{shorter:.0f} mm", "end the darts above the yoke line")
        yield worded(
            CHECK,
            "yoke-crosses-darts",
            Severity.NOTE,
            Measured(depth),
            piece=names.piece(which),
            where=names.at(which, "yoke_line"),
            panel=spoken(names.piece(which)),
            cures=(cure,) if shorter >= SHORTEST_DART else (),
        )


def _panel_notes(names: PanelNames, which: str, panel: Panel, drop: float = 0.0) -> Iterator[Finding]:
    """What is odd about one panel; ``drop`` is by how much its center was lowered on purpose, mm."""
    name = names.piece(which)
    for index, role in enumerate(DART_ROLES[len(panel.points)]):
        dart = part_name(name, role)
        intake = panel.intake(index)
        if intake > WIDEST_DART:
            amount = Measured(intake, WIDEST_DART)
            yield worded(CHECK, "dart-wide", Severity.LOOK, amount, piece=name, where=dart, dart=spoken(dart))
    low, high = MEASURED_FLATNESS
    waist = part_name(name, "waist")
    code, amount = "", Measured()
    if panel.rise - drop > HIGHEST_RISE:
        code, amount = "side-rises", Measured(panel.rise - drop, HIGHEST_RISE)
    elif not low <= panel.flatness <= high:
        wanted = low if panel.flatness < low else high
        code, amount = "center-heights-disagree", Measured(panel.flatness, wanted, "")
    if code:
        yield worded(CHECK, code, Severity.LOOK, amount, piece=name, where=waist, panel=spoken(name))
