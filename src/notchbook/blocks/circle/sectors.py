"""The circle skirt as pieces: sectors of the ring with their names, seams and cut data.

In the frame of a piece its center line runs from the waist at (0, 0) straight down, along the grain.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from notchbook.blocks.circle.ring import Ring
from notchbook.blocks.skirts.arc import arc
from notchbook.geometry import Path, Point, Transform, direction
from notchbook.pattern import (
    Allowance,
    CutAs,
    Edge,
    EdgeUse,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
)

Panels = Literal["one", "two", "three", "four"]
"""``one``: on the fold at the center front, with a center back seam; ``two``: front and back, each on the
fold; ``three``: the back has a center seam; ``four``: the front has one too."""

_ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


@dataclass(frozen=True, slots=True)
class Sector:
    """One piece as it is drawn: from its center line to its far edge.

    ``center`` and ``far`` are the words of these edges, ``center_end`` and ``far_end`` those of their ends
    (``waist_<word>``); ``span`` is what is drawn, degrees.
    """

    word: str
    title: str
    center: str
    far: str
    center_end: str
    far_end: str
    cut: CutAs
    span: float

    @property
    def whole_span(self) -> float:
        """What the cut piece spans, degrees."""
        return 2.0 * self.span if self.cut == "fold" else self.span


def sectors(ring: Ring, panels: Panels) -> tuple[Sector, ...]:
    """The pieces of a skirt, front first."""
    if panels == "one":
        whole = Sector(
            "skirt",
            "Skirt",
            "center_front",
            "center_back",
            "center_front",
            "center_back",
            "fold",
            ring.span(2),
        )
        return (whole,)
    seamed = {"front": panels == "four", "back": panels != "two"}
    return tuple(
        Sector(
            which,
            which.capitalize(),
            f"center_{which}",
            "side_seam",
            "center",
            "side",
            "pair" if has_seam else "fold",
            ring.span(4),
        )
        for which, has_seam in seamed.items()
    )


def sector_piece(slug: str, ring: Ring, sector: Sector, hip_depth: float | None) -> Piece:
    """The piece; its hip line is drawn where ``hip_depth`` below the waist is known."""
    name = piece_name(slug, sector.word)
    apex, last = Point(0.0, ring.waist_radius), -90.0 + sector.span

    def at(word: str) -> str:
        return part_name(name, word)

    out = direction(last)
    waist_far, hem_far = apex + out * ring.waist_radius, apex + out * ring.hem_radius
    waist_center, hem_center = Point(0.0, 0.0), Point(0.0, -ring.length)
    hem = arc(apex, ring.hem_radius, -90.0, last).with_start(hem_center).with_end(hem_far)
    waist = arc(apex, ring.waist_radius, last, -90.0).with_start(waist_far).with_end(waist_center)
    points = [
        at(f"{level}_{end}") for level in ("waist", "hem") for end in (sector.center_end, sector.far_end)
    ]
    waist_at_center, waist_at_far, hem_at_center, hem_at_far = points
    lines: tuple[InternalLine, ...] = ()
    if hip_depth is not None and hip_depth < ring.length:
        level = arc(apex, ring.waist_radius + hip_depth, -90.0, last)
        lines = (InternalLine(at("hip_line"), level, "level"),)
    piece = Piece(
        name=name,
        title=sector.title,
        outline=(
            Edge(
                at(sector.center),
                Path.line(waist_center, hem_center),
                waist_at_center,
                hem_at_center,
                "fold" if sector.cut == "fold" else "seam",
            ),
            Edge(at("hem"), hem, hem_at_center, hem_at_far, "hem"),
            Edge(at(sector.far), Path.line(hem_far, waist_far), hem_at_far, waist_at_far),
            Edge(at("waist"), waist, waist_at_far, waist_at_center),
        ),
        lines=lines,
        cut=sector.cut,
    )
    return piece if sector.word == "back" else piece.transformed(_ACROSS)


def sector_seams(slug: str, drawn: tuple[Sector, ...]) -> Iterator[Seam]:
    """The side seam between front and back, and the seams between the wearer's two sides."""
    if len(drawn) > 1:
        front, back = (piece_name(slug, sector.word) for sector in drawn)
        uses = (
            EdgeUse(part_name(piece, "side_seam"), part_name(piece, "waist_side")) for piece in (front, back)
        )
        yield Seam(part_name(slug, "side_seam"), (next(uses),), (next(uses),), allowance_class="side")
    for sector in drawn:
        piece = piece_name(slug, sector.word)
        if sector.far == "center_back":
            yield _between_sides(slug, piece, sector.far, sector.far_end)
        elif sector.cut == "pair":
            yield _between_sides(slug, piece, sector.center, sector.center_end)


def _between_sides(slug: str, piece: str, center: str, end: str) -> Seam:
    edge, top = part_name(piece, center), part_name(piece, f"waist_{end}")
    return Seam(
        part_name(slug, center),
        (EdgeUse(edge, top, "right"),),
        (EdgeUse(edge, top, "left"),),
        allowance_class=center,
    )


def with_cut_data(
    pattern: Pattern, slug: str, ring: Ring, drawn: tuple[Sector, ...], hip_depth: float | None
) -> Pattern:
    """Classes of the edges that no seam joins; hip notches, and the side on a skirt in one piece."""
    hem_class = "hem_circle" if ring.share >= HEM_OF_A_CIRCLE else "hem_skirt_flared"
    for sector in drawn:
        piece = piece_name(slug, sector.word)
        classes = {"waist": Allowance("waist"), "hem": Allowance(hem_class)}
        pattern = pattern.with_allowances({part_name(piece, word): row for word, row in classes.items()})
        pattern = pattern.with_notches(*_notches(slug, piece, ring, sector, hip_depth))
    return pattern


HEM_OF_A_CIRCLE = 0.5
"""Share of a circle from which a hem is turned as narrow as a circle skirt's. Own judgment."""


def _notches(slug: str, piece: str, ring: Ring, sector: Sector, hip_depth: float | None) -> Iterator[Notch]:
    if sector.far == "center_back":
        place = Place(part_name(piece, "waist"), part_name(piece, "waist_center_front"), 0.5, "fraction")
        yield Notch(part_name(piece, "side_notch"), place, purpose="side seam")
    if hip_depth is None or hip_depth >= ring.length:
        return
    place = Place(part_name(piece, sector.far), part_name(piece, f"waist_{sector.far_end}"), hip_depth)
    seam = part_name(slug, sector.far)
    yield Notch(part_name(piece, "hip_notch"), place, seam=seam, purpose="hip")
