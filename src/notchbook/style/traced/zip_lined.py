"""A lining at a zip: it is open as far as the garment is, and the stitches of the zip are not sewn in it."""

from collections.abc import Collection, Mapping
from dataclasses import replace

from notchbook.pattern import Operation, Pattern, Piece, part_name
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.resolve import expand
from notchbook.style.traced.zip_ends import zips_in

_STITCHES = "stitch_line"


def without_zip_stitches(pattern: Pattern, piece: Piece) -> Piece:
    """The piece without the lines along which a zip or fly is stitched."""
    lines = tuple(
        line
        for line in piece.lines
        if not (
            last_word(line.name).startswith(_STITCHES)
            and part_name(instance_of(line.name), "zip") in pattern.operations
        )
    )
    return replace(piece, lines=lines)


def with_lined_zips(
    pattern: Pattern, names: Mapping[str, str], pieces: Collection[str], slug: str
) -> Pattern:
    """The pattern, told in the order of work how the lining is sewn to the tape of a zip.

    ``names``: the name on the lining for each name of what was lined; ``pieces``: those of the lining.
    """
    at = dict.fromkeys(
        notch.place.edge
        for notch in pattern.notches.values()
        if "zip" in notch.purpose and _carrier(pattern, notch.place.edge) in pieces
    )
    if not at:
        return pattern
    members = {member for edge in at for member in expand(pattern, edge)[0]}
    outer = [name for name, own in names.items() if own in members]
    text = "Turn the edges of the lining in above its zip notch and sew them to the tape of the zip."
    after = (*zips_in(pattern, outer), *_own_seams(pattern, pieces))
    return pattern.with_operations(Operation(part_name(slug, "zip_edges"), "lining", text, tuple(at), after))


def _own_seams(pattern: Pattern, pieces: Collection[str]) -> list[str]:
    """All seams of the lining."""
    return [
        seam.name
        for seam in pattern.seams.values()
        if any(_carrier(pattern, use.edge) in pieces for use in (*seam.first, *seam.second))
    ]


def _carrier(pattern: Pattern, edge: str) -> str | None:
    members = expand(pattern, edge)[0]
    return pattern.carriers[members[0]] if members else None
