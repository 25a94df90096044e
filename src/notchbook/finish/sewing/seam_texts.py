"""The line of a seam, or of several that are sewn in one go."""

from collections.abc import Sequence

from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.seam_words import is_cap, seam_word, titled, titles_of
from notchbook.finish.sewing.zips import is_invisible, zip_in
from notchbook.pattern import EdgeUse, Pattern, Seam
from notchbook.pattern.seam import TURNED_SEAM

_BOUND = "BS"
"""How the classes of bound seams begin (ASTM D6193)."""


def seam_text(pattern: Pattern, seams: Sequence[Seam]) -> str:
    """``Sew the front to the back: side seam``; a piece sewn to itself is closed. A zip leaves a part of the
    seam open, or all of it."""
    seam = seams[0]
    first, second = (
        tuple(dict.fromkeys(title for uses in runs for title in titles_of(pattern, uses)))
        for runs in ([one.first for one in seams], [one.second for one in seams])
    )
    word, zipped = seam_word(pattern, seam), zip_in(pattern, seam)
    if zipped == "whole":
        return f"Leave the {titled(tuple(dict.fromkeys((*first, *second))))} open for the zip: {word}"
    where = f", {_beside_zip(pattern, seam, zipped)}" if zipped else ""
    if _sets_in(pattern, seam):
        return f"Set the {titled(second)} into the armhole of the {titled(first)}"
    if first == second:
        return f"{_closed(pattern, seam, first)}{where}: {word}"
    begun = f"Sew the {titled(first)}"
    if _is_folded_band(pattern, seam):
        begun = f"Fold the {titled(first)} along its line, wrong sides together, and sew it"
    return f"{begun} to the {_of_side(seam)}{titled(second)}{where}: {word}"


def _closed(pattern: Pattern, seam: Seam, titles: tuple[str, ...]) -> str:
    """A piece sewn to itself, or left to right."""
    is_pair = {use.side for use in seam.first} & {"left", "right"} and not _is_whole(pattern, seam)
    return f"Sew the {titled(titles)}, left to right" if is_pair else f"Close the {titled(titles)}"


def _of_side(seam: Seam) -> str:
    """On which side a piece is sewn that the other does not have: facing and shield of a fly."""
    sides = {use.side for use in seam.second} - {"both"}
    return f"wearer's {sides.pop()} " if seam.allowance_class == "fly" and len(sides) == 1 else ""


def _beside_zip(pattern: Pattern, seam: Seam, zipped: str) -> str:
    """Where a seam with a zip is sewn; beside an invisible one it meets the stitches of that."""
    if is_invisible(pattern, seam):
        way = "down" if zipped == "below" else "up"
        return f"from the end of the zip {way}, close to its stitches"
    return f"{zipped} the zip notch"


def _sets_in(pattern: Pattern, seam: Seam) -> bool:
    """Whether the second run is the cap of a sleeve."""
    caps = [is_cap(step.edge.name) for step in steps(pattern, seam.second)]
    return seam.allowance_class == "armhole" and seam.seam_class != TURNED_SEAM and bool(caps) and all(caps)


def _is_folded_band(pattern: Pattern, seam: Seam) -> bool:
    """Whether the seam stretches a band on that is folded along its line, both its edges in the seam."""
    bands = {pattern.carriers[step.edge.name] for step in steps(pattern, seam.first)}
    lines = [{line.kind for line in pattern.pieces[name].lines} for name in bands]
    is_plain = seam.gives == "shorter" and not seam.seam_class.startswith(_BOUND)
    return is_plain and bool(lines) and all("fold_line" in kinds for kinds in lines)


def _is_whole(pattern: Pattern, seam: Seam) -> bool:
    """Whether the seam closes a piece that is cut whole, as the ends of a band."""
    uses: tuple[EdgeUse, ...] = (*seam.first, *seam.second)
    run = steps(pattern, uses)
    return bool(run) and all(pattern.piece_of(step.edge.name).cut == "fold" for step in run)
