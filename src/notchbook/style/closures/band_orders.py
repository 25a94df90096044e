"""What is done with a straight waistband once it is sewn on: it is folded, its inner edge stitched down."""

from collections.abc import Iterator, Sequence

from notchbook.pattern import Operation, Piece, part_name


def band_orders(slug: str, pieces: Sequence[Piece]) -> Iterator[Operation]:
    """The lines of the sewing order after both halves of the waist are sewn to the band."""
    names = tuple(piece.name for piece in pieces)
    sewn_on = tuple(part_name(slug, f"waist_{side}") for side in ("right", "left"))
    turned = part_name(slug, "band_turned")
    text = (
        "Fold the waistband along its line, right sides together, sew its ends and the lower edge of the "
        "underlap, trim the corners, turn it and press it."
    )
    yield Operation(turned, "waist", text, names, sewn_on)
    text = "Turn the inner edge of the waistband in, or neaten it, and stitch it down in the waist seam."
    yield Operation(part_name(slug, "band_stitched"), "waist", text, names, (turned,))
