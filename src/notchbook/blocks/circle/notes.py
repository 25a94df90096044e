"""What the circle skirt has to say: how it passes the body, how it hangs, how it is cut."""

from collections.abc import Iterator
from math import ceil

from notchbook.blocks.circle.ring import Ring, least_share
from notchbook.blocks.circle.sectors import Sector
from notchbook.blocks.skirts.figures import skirt_figure
from notchbook.blocks.skirts.levels import Level, TightLevel, level_notes, tight_levels
from notchbook.pattern import Cure, Finding, Measured, Severity, part_name, piece_name, spoken, worded

CHECK = "circle-skirt-draft"
"""The name under which the draft speaks."""

OFF_GRAIN = 30.0
"""Degrees off the grain from which cloth hangs out as on the bias. Own judgment."""

WIDEST_SPAN = 315.0
"""Degrees that one cut piece spans at most: beyond it its own two ends meet. Own judgment."""


def hip_notes(
    slug: str, ring: Ring, drawn: tuple[Sector, ...], levels: tuple[Level, ...]
) -> Iterator[Finding]:
    """Levels of the body that the skirt does not pass, each with the least share that would."""
    seam = part_name(piece_name(slug, drawn[0].word), drawn[0].far)

    def cures(tight: TightLevel) -> tuple[Cure, ...]:
        share = ceil(1000.0 * least_share(ring.waist, tight.wanted, tight.level.depth)) / 1000.0
        return (Cure(slug, "own_share", share, f"draft {share} of a circle"),)

    yield from level_notes(CHECK, tight_levels(levels, ring.girth_at), seam, cures)
    if "hip_girth" not in {level.key for level in levels}:
        yield worded(CHECK, "skirt-hip-not-looked-at", Severity.NOTE)


def cloth_notes(slug: str, ring: Ring, drawn: tuple[Sector, ...]) -> Iterator[Finding]:
    """Pieces wider than cloth, and edges that hang on the bias."""
    for sector in drawn:
        piece = piece_name(slug, sector.word)
        width = _width_across_grain(ring, sector)
        if width > skirt_figure("cloth.wide"):
            in_four = ring.hem_radius <= skirt_figure("cloth.wide")
            cures = (Cure(slug, "panels", "four", "cut it in four panels"),) if in_four else ()
            yield worded(
                CHECK,
                "piece-wider-than-cloth",
                Severity.LOOK,
                Measured(width, skirt_figure("cloth.wide")),
                piece=piece,
                panel=spoken(piece),
                cures=cures if sector.cut == "fold" else (),
            )
    if max(sector.span for sector in drawn) >= OFF_GRAIN:
        hem = part_name(piece_name(slug, drawn[-1].word), "hem")
        yield worded(CHECK, "bias-hangs-out", Severity.NOTE, where=hem)


def _width_across_grain(ring: Ring, sector: Sector) -> float:
    """The level width of the cut piece, its center on the grain, without allowances, mm."""
    if sector.cut == "fold":
        return ring.width_of(sector.whole_span)
    return ring.width_of(2.0 * sector.span) / 2.0 if sector.span <= 180.0 else ring.width_of(180.0)


def stretch_note(amount: float, waist: str) -> Iterator[Finding]:
    """A waist that is drafted smaller because it stretches when it is sewn, mm."""
    if amount > 0.0:
        yield worded(CHECK, "waist-drafted-smaller", Severity.NOTE, Measured(amount), where=waist)
