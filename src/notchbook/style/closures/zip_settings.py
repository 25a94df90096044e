"""How a zip is set into a seam: its allowance, its stitches and its line in the order of work."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal

from notchbook.geometry import Path, offset
from notchbook.pattern import InternalLine, Pattern, Place, directed, part_name
from notchbook.pattern.operation import Operation
from notchbook.recipe.usual_ease import Grade
from notchbook.style.closures.divided import owner_on, words_at

ZipSetting = Literal["plain", "centered", "lapped", "invisible"]


@dataclass(frozen=True, slots=True)
class ZipRow:
    """One way: the class of its allowance, how far inside the seam it is stitched (mm; 0: no stitches show),
    on both edges or on that which laps alone, and the order of work."""

    allowance_class: str
    stitched: float
    on_both: bool
    text: str
    source: str
    grade: Grade


ZIP_SETTINGS: Mapping[ZipSetting, ZipRow] = MappingProxyType(
    {
        "plain": ZipRow("zip", 0.0, True, "Set the zip in down to its notch.", "zip seam 3/4 in", "handbook"),
        "centered": ZipRow(
            "zip",
            6.0,
            True,
            "Baste or tape the opening closed, center the zip behind it, stitch both sides and across at the "
            "notch.",
            "centered zip stitched 1/4 in from the seam",
            "common practice",
        ),
        "lapped": ZipRow(
            "zip_lapped",
            10.0,
            False,
            "Sew the zip close to the fold of the side that lies under, lap {laps} over it, stitch the lap.",
            "lap of 3/8 to 1/2 in",
            "common practice",
        ),
        "invisible": ZipRow(
            "zip_invisible",
            0.0,
            True,
            "Sew the invisible zip to both edges, down to its notch.",
            "5/8 in beside an invisible zip",
            "common practice",
        ),
    }
)
"""The table of settings."""


def with_zip_stitches(pattern: Pattern, slug: str, stops: Sequence[Place], row: ZipRow) -> Pattern:
    """The pattern with the line of stitches beside each opening, or the first alone where one edge laps; down
    to its stop and across to the seam."""
    if row.stitched <= 0.0:
        return pattern
    after = pattern
    ends = [(one.edge, one.from_point) for one in stops]
    for index, stop in enumerate(stops if row.on_both else stops[:1]):
        named = words_at(pattern, ends, index, "stitch_line")
        for number, (carrier, path) in enumerate(_stitches(pattern, stop, row.stitched), 1):
            word = named if number == 1 else f"{named}_{number}"
            line = InternalLine(part_name(owner_on(slug, carrier), word), path, "stitch_line")
            piece = after.pieces[carrier]
            after = after.with_pieces(replace(piece, lines=(*piece.lines, line)))
    return after


def _stitches(pattern: Pattern, stop: Place, inside: float) -> Iterator[tuple[str, Path]]:
    """The piece and the line beside each part of the opening, from the end where it opens."""
    rest = stop.amount
    for step in directed(pattern, stop.edge, stop.from_point):
        opened = min(rest, step.edge.length)
        walked = step.path.split_at(opened)[0] if opened < step.edge.length else step.path
        beside = offset(walked, inside if step.forward else -inside)
        rest -= opened
        is_last = rest <= 1e-6
        if is_last:
            beside = beside.joined(Path.line(beside.end, walked.end))
        yield pattern.carriers[step.edge.name], beside
        if is_last:
            return


def zip_operation(
    slug: str, setting: ZipSetting, laps: Literal["left", "right"], stops: Sequence[Place]
) -> Operation:
    """The zip's line in the order of work."""
    edges = tuple(dict.fromkeys(one.edge for one in stops))
    over = f"the wearer's {laps} side" if len(edges) == 1 else "the other edge"
    text = ZIP_SETTINGS[setting].text.format(laps=over)
    return Operation(part_name(slug, "zip"), "closures", text, edges)
