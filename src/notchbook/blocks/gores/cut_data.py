"""Cut data of a gored skirt: classes of waist and hem, and notches that tell the gores apart."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from notchbook.blocks.gores.arrangement import GorePlace
from notchbook.blocks.gores.pieces import END_WORDS
from notchbook.pattern import Allowance, Notch, Pattern, Place, part_name, piece_name
from notchbook.pattern.cut import NotchKind

FIRST_BALANCE = 0.3
NEXT_BALANCE = 0.09
"""Where the balance notch of the seam nearest to the center front stands between hip and hem, as a share,
and how much lower each further seam has its own: no two seams of a skirt have theirs at one height. Common
practice, no source."""


@dataclass(frozen=True, slots=True)
class HipDepths:
    """How far below the waist the hip lies on ``own`` side, and where both sides are ``shared``, mm."""

    own: float
    shared: float


def with_cut_data(
    pattern: Pattern, slug: str, places: tuple[GorePlace, ...], hip: HipDepths, length: float
) -> Pattern:
    """The pattern with allowance classes of what no seam joins, and the notches."""
    pieces = [piece_name(slug, place.word) for place in places]
    for piece in pieces:
        rows = {"waist": Allowance("waist"), "hem": Allowance("hem_skirt_flared")}
        pattern = pattern.with_allowances({part_name(piece, word): row for word, row in rows.items()})
    return pattern.with_notches(*_notches(slug, places, hip, length))


def _notches(slug: str, places: tuple[GorePlace, ...], hip: HipDepths, length: float) -> Iterator[Notch]:
    """The hip on every seam; on those between gores a balance notch, double behind the side."""
    if not places[0].is_over_center:
        yield _notch(slug, places[0], places[0].front_edge, (slug, "center_front"), "hip", hip.shared)
    passed, gores = 0, sum(place.halves for place in places)
    for index, (before, after) in enumerate(pairwise(places)):
        passed += before.halves
        side = before.back_edge == "side_seam"
        seam = (slug, "side_seam") if side else (slug, "gore_seam", before.word, after.word)
        kind: NotchKind = "double" if 2 * passed > gores else "single"
        low = hip.own + (FIRST_BALANCE + NEXT_BALANCE * index) * (length - hip.own)
        for place, edge in ((before, before.back_edge), (after, after.front_edge)):
            yield _notch(slug, place, edge, seam, "hip", hip.own)
            yield _notch(slug, place, edge, seam, "balance", low, kind)
    if places[-1].has_seam or not places[-1].is_over_center:
        yield _notch(slug, places[-1], places[-1].back_edge, (slug, "center_back"), "hip", hip.shared)


def _notch(
    slug: str,
    place: GorePlace,
    edge: str,
    seam: tuple[str, ...],
    purpose: str,
    below_waist: float,
    kind: NotchKind = "single",
) -> Notch:
    piece = piece_name(slug, place.word)
    return Notch(
        part_name(piece, edge, f"{purpose}_notch"),
        Place(part_name(piece, edge), part_name(piece, f"waist_{END_WORDS[edge]}"), below_waist),
        kind,
        part_name(*seam),
        purpose,
    )
