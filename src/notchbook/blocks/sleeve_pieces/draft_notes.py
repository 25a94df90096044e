"""What the sleeve draft has to say of itself: closed is not yet good."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.room import lower_armhole_by
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.blocks.sleeve_pieces.cures import lower_the_armhole
from notchbook.blocks.sleeve_pieces.sleeve_measures import ArmRead
from notchbook.blocks.upper.shapes import Lever
from notchbook.pattern import Cure, Finding, Measured, Severity, part_name, piece_name, worded

_CHECK = "sleeve-draft"
"""The name under which the draft speaks."""

_WIDER = 1.0
"""mm of hem or biceps that are not worth a word."""

_STRAIGHT_DOWN = 0.5
"""Degrees of pitch below which a sleeve hangs straight down (own judgment)."""


@dataclass(frozen=True, slots=True)
class Drafted:
    """What the sleeve step speaks of: what was given, what came out, and under which names."""

    slug: str
    bodice: str
    given: SleeveGiven
    half: SleeveHalf
    arm: ArmRead

    @property
    def sleeve(self) -> str:
        """The name of the piece."""
        return piece_name(self.slug, "sleeve")

    @property
    def levers(self) -> dict[str, Lever]:
        """The levers by their names."""
        return {lever.name: lever for lever in self.half.levers}


def draft_notes(drafted: Drafted, fabric: tuple[float, float] | None) -> tuple[Finding, ...]:
    """Pitch, levers at their limits, and what was assumed. ``fabric``: the range of its cap ease, mm."""
    return (
        _pitch_note(drafted),
        *_cap_notes(drafted),
        *_ease_notes(drafted, fabric),
        *_width_notes(drafted),
        *_elbow_notes(drafted),
    )


def _pitch_note(drafted: Drafted) -> Finding:
    half = drafted.half
    hangs_straight = half.pitch < _STRAIGHT_DOWN
    return worded(
        _CHECK,
        "sleeve-hangs-straight" if hangs_straight else "sleeve-pitch",
        Severity.LOOK if hangs_straight else Severity.NOTE,
        Measured(half.pitch, None, "deg"),
        piece=drafted.sleeve,
        where=part_name(drafted.sleeve, "crown"),
        pitch=half.pitch,
        behind=half.pitch * drafted.given.armhole.girth / 360.0,
    )


def _cap_notes(drafted: Drafted) -> Iterator[Finding]:
    sleeve, half, girth = drafted.sleeve, drafted.half, drafted.given.armhole.girth
    levers, crown = drafted.levers, part_name(sleeve, "crown")
    share, box = levers["cap_height_share"], levers["half_height_width"]
    strays = [which for which in ("front", "back") if _strays(levers[f"{which}_lay_gap"])]
    is_low = share.pulled < share.least
    is_boxy = box.pulled > box.most and not strays  # a cap that strays is boxy for the same cause
    cures = _lowering(drafted) if is_low or is_boxy or strays else ()
    if share.pulled > share.most:
        height = Measured(half.cap_height, share.most * girth)
        yield worded(_CHECK, "sleeve-cap-high", Severity.LOOK, height, piece=sleeve, where=crown)
    if is_low:
        height = Measured(half.cap_height, share.least * girth)
        yield worded(_CHECK, "sleeve-cap-low", Severity.LOOK, height, piece=sleeve, where=crown, cures=cures)
    if is_boxy:
        width = Measured(box.pulled * half.biceps, box.most * half.biceps)
        yield worded(_CHECK, "sleeve-cap-boxy", Severity.LOOK, width, piece=sleeve, where=crown, cures=cures)
    for which in strays:
        gap = levers[f"{which}_lay_gap"]
        yield worded(
            _CHECK,
            "sleeve-cap-leaves-armhole",
            Severity.NOTE,  # the check that lays the cap into the armhole says it louder
            Measured(gap.pulled, gap.most),
            piece=sleeve,
            where=part_name(sleeve, f"cap_{which}"),
            which=which,
            length=figure("lay.least_length"),
            cures=cures,
        )
    for which in ("front", "back"):
        flank, where = levers[f"{which}_flank"], part_name(sleeve, f"cap_{which}")
        if flank.pulled > flank.most:
            steep = Measured(flank.pulled, flank.most, "deg")
            yield worded(
                _CHECK, "sleeve-cap-steep", Severity.LOOK, steep, piece=sleeve, where=where, which=which
            )


def _strays(gap: Lever) -> bool:
    return gap.pulled > gap.most


def _lowering(drafted: Drafted) -> tuple[Cure, ...]:
    """The cure of a low, boxy or straying cap, where a lower armhole heals it."""
    if drafted.given.keep != "biceps":
        return ()
    lower_by = lower_armhole_by(drafted.given)
    return () if lower_by is None else (lower_the_armhole(drafted.bodice, lower_by),)


def _ease_notes(drafted: Drafted, fabric: tuple[float, float] | None) -> Iterator[Finding]:
    ease = drafted.given.cap_ease
    if fabric is None or fabric[0] <= ease <= fabric[1]:
        return
    nearest = fabric[0] if ease < fabric[0] else fabric[1]
    where = part_name(drafted.sleeve, "crown")
    yield worded(
        _CHECK,
        "sleeve-cap-ease-unusual",
        Severity.LOOK,
        Measured(ease, nearest),
        piece=drafted.sleeve,
        where=where,
        least=fabric[0],
        most=fabric[1],
    )


def _width_notes(drafted: Drafted) -> Iterator[Finding]:
    sleeve, half, levers = drafted.sleeve, drafted.half, drafted.levers
    if drafted.given.gave_way > 0.0:
        yield worded(
            _CHECK,
            "sleeve-arm-ease-gave-way",
            Severity.NOTE,
            Measured(drafted.given.biceps, drafted.given.biceps + drafted.given.gave_way),
            piece=sleeve,
            where=part_name(sleeve, "biceps_line"),
            less=drafted.given.gave_way,
        )
    wider = levers["biceps_widened"].pulled
    if wider > _WIDER:
        girth = Measured(half.biceps, drafted.given.biceps)
        line = part_name(sleeve, "biceps_line")
        yield worded(_CHECK, "sleeve-widened", Severity.LOOK, girth, piece=sleeve, where=line, wider_by=wider)
    hem, girth = part_name(sleeve, "hem"), Measured(half.hem_girth, drafted.given.hem)
    if levers["hem_widened"].pulled > _WIDER:
        yield worded(_CHECK, "sleeve-hem-widened", Severity.NOTE, girth, piece=sleeve, where=hem)
    elif levers["hem_widened"].pulled < -_WIDER:
        yield worded(_CHECK, "sleeve-hem-narrowed", Severity.LOOK, girth, piece=sleeve, where=hem)


def _elbow_notes(drafted: Drafted) -> Iterator[Finding]:
    arm, sleeve = drafted.arm, drafted.sleeve
    if arm.elbow_is_assumed and drafted.half.elbow_line is not None:
        line = part_name(sleeve, "elbow_line")
        level = Measured(arm.elbow_length)
        yield worded(_CHECK, "sleeve-elbow-assumed", Severity.NOTE, level, piece=sleeve, where=line)
