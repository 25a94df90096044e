"""The casing of an elastic: cut on at its edge, or a strip of its own."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeUse,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
    require,
    run_length,
)
from notchbook.pattern.operation import Operation
from notchbook.style._band_openings import Opening, place_along
from notchbook.style.closures.half_waist import seam_between
from notchbook.style.closures.strip import StripEnds, StripPart, folded_along, strip_outline


@dataclass(frozen=True, slots=True)
class CasingSize:
    """How ``wide`` a finished casing is inside, and what is ``turned`` under at its raw edge, mm."""

    wide: float
    turned: float


def cut_on(pattern: Pattern, slug: str, opening: Opening, size: CasingSize) -> Pattern:
    """The waist turned over itself: its allowance is the casing, its ends folded so that they lie flat."""
    members = [name for use in opening.uses for name in require(pattern, use.edge)]
    after = pattern
    for name in dict.fromkeys(pattern.carriers[member] for member in members):
        piece = after.pieces[name]
        outline = tuple(replace(edge, kind="hem") if edge.name in members else edge for edge in piece.outline)
        after = after.with_pieces(replace(piece, outline=outline))
    allowance = Allowance("elastic_casing", size.wide + size.turned)
    after = after.with_allowances(dict.fromkeys((use.edge for use in opening.uses), allowance))
    for use in opening.uses:
        edges = [pattern.edges[name] for name in require(pattern, use.edge)]
        after = after.with_corners({edges[0].start: "folded", edges[-1].end: "folded"})
    text = "Turn the casing over, stitch its edge but for a gap, draw the elastic through, and close both."
    edges_at = tuple(use.edge for use in opening.uses)
    return after.with_operations(Operation(part_name(slug, "casing"), "waist", text, edges_at))


def of_its_own(pattern: Pattern, slug: str, opening: Opening, size: CasingSize) -> Pattern:
    """A folded strip, as long as the waist, sewn to it; half of it from its fold where that is a half."""
    piece = _strip(slug, opening, size)
    seam = Seam(
        part_name(slug, "waist"),
        (EdgeUse(part_name(piece.name, "lower"), part_name(piece.name, _start(opening))),),
        opening.uses,
        allowance_class="waist",
    )
    waist = Allowance("waist")
    given = {use.edge: waist for use in opening.uses}
    given |= {part_name(piece.name, word): waist for word in ("lower", "upper")}
    after = pattern.with_pieces(piece).with_seams(seam, _ring(slug, piece, opening)).with_allowances(given)
    after = after.with_notches(*_notches(pattern, slug, piece, opening, seam.name))
    sewn = part_name(slug, "casing")
    text = "Fold the casing over the waist seam and stitch its inner edge down but for a gap."
    drawn = part_name(slug, "elastic_drawn")
    last = "Draw the elastic through, lap its ends and sew them, and close the gap of the casing."
    return after.with_operations(
        Operation(sewn, "waist", text, (piece.name,), (seam.name,)),
        Operation(drawn, "finish", last, (piece.name,), (sewn,)),
    )


def _start(opening: Opening) -> str:
    return "lower_center" if opening.is_half else "lower_left"


def _strip(slug: str, opening: Opening, size: CasingSize) -> Piece:
    name, height = piece_name(slug, "casing"), 2.0 * size.wide
    if opening.is_half:
        ends = StripEnds(
            "lower_end", ("upper_end", "upper_center"), ("end", "upper", "center"), ("seam", "plain", "fold")
        )
    else:
        ends = StripEnds(
            "lower_right",
            ("upper_right", "upper_left"),
            ("right_end", "upper", "left_end"),
            ("seam", "plain", "seam"),
        )
    outline: tuple[Edge, ...] = strip_outline(
        name, [StripPart("lower", opening.length, _start(opening))], ends, height
    )
    return Piece(
        name=name,
        title="Waist casing",
        outline=outline,
        lines=(folded_along(name, outline, height),),
        cut="fold" if opening.is_half else "single",
        rule=slug,
    )


def _ring(slug: str, piece: Piece, opening: Opening) -> Seam:
    """The strip closed to a ring."""
    if opening.is_half:
        end, point = part_name(piece.name, "end"), part_name(piece.name, "lower_end")
        runs = (EdgeUse(end, point, "right"),), (EdgeUse(end, point, "left"),)
    else:
        runs = (
            (EdgeUse(part_name(piece.name, "left_end"), part_name(piece.name, "lower_left")),),
            (EdgeUse(part_name(piece.name, "right_end"), part_name(piece.name, "lower_right")),),
        )
    return Seam(part_name(slug, "casing_end"), *runs)


def _notches(pattern: Pattern, slug: str, piece: Piece, opening: Opening, seam: str) -> Iterator[Notch]:
    """Where the seams of the garment meet the strip."""
    travelled = 0.0
    for number, use in enumerate(opening.uses[:-1], 1):
        travelled += run_length(pattern, (use,))
        place = Place(part_name(piece.name, "lower"), part_name(piece.name, _start(opening)), travelled)
        purpose = seam_between(pattern, use, opening.uses[number])
        yield Notch(part_name(piece.name, f"seam_notch_{number}"), place, purpose=purpose)
    middle = opening.length / 2.0
    own = Place(part_name(piece.name, "lower"), part_name(piece.name, _start(opening)), middle)
    yield Notch(part_name(piece.name, "quarter_notch"), own, seam=seam, purpose="quarter")
    mate = place_along(pattern, opening, middle)
    yield Notch(part_name(seam, "quarter_notch"), mate, seam=seam, purpose="quarter")
