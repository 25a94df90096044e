"""The gored skirt as pieces: outlines, names and seams of drafted gores."""

from collections.abc import Iterator
from itertools import pairwise

from notchbook.blocks.gores.arrangement import GorePlace
from notchbook.blocks.gores.shapes import HalfGore
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, EdgeUse, InternalLine, Piece, Seam, part_name, piece_name

END_WORDS = {
    "center_front": "center",
    "center_back": "center",
    "side_seam": "side",
    "front_seam": "front",
    "back_seam": "back",
}
"""What the ends of an edge are called at waist and hem: ``waist_front`` and ``hem_front``."""

_ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


def gore_piece(slug: str, place: GorePlace, gore: HalfGore, flare_below_hip: float) -> Piece:
    """The piece of one gore; its flare line is drawn where the flare begins so far below the hip, mm.

    Over a center half of it is drawn, else the whole: its front edge lies toward +x.
    """
    name = piece_name(slug, place.word)
    lines = {"hip_line": gore.hip}
    if flare_below_hip > 0.0:
        lines["flare_line"] = _flare_line(gore, flare_below_hip)
    outline = _half_outline(name, place, gore) if place.is_over_center else _whole_outline(name, place, gore)
    drawn = {word: line if place.is_over_center else _whole(line) for word, line in lines.items()}
    piece = Piece(
        name=name,
        title=place.title,
        outline=outline,
        lines=tuple(InternalLine(part_name(name, word), path, "level") for word, path in drawn.items()),
        cut="fold" if place.is_over_center and not place.has_seam else "pair",
    )
    return piece.transformed(_ACROSS) if place.is_over_center and place.word == "center_front" else piece


def gore_seams(slug: str, places: tuple[GorePlace, ...]) -> Iterator[Seam]:
    """The seams from front to back: at the center front, between gores, at the center back."""
    if not places[0].is_over_center:
        yield _between_sides(slug, places[0], "center_front")
    for before, after in pairwise(places):
        words = ("side_seam",) if before.back_edge == "side_seam" else ("gore_seam", before.word, after.word)
        yield Seam(
            part_name(slug, *words),
            (_use(slug, before, before.back_edge),),
            (_use(slug, after, after.front_edge),),
            allowance_class="side" if words[0] == "side_seam" else "style_line",
        )
    if places[-1].has_seam or not places[-1].is_over_center:
        yield _between_sides(slug, places[-1], "center_back")


def _between_sides(slug: str, place: GorePlace, word: str) -> Seam:
    use = _use(slug, place, word)
    return Seam(
        part_name(slug, word),
        (EdgeUse(use.edge, use.starts_at, "right"),),
        (EdgeUse(use.edge, use.starts_at, "left"),),
        allowance_class=word,
    )


def _use(slug: str, place: GorePlace, edge: str) -> EdgeUse:
    """An edge of a gore, walked from the waist."""
    piece = piece_name(slug, place.word)
    return EdgeUse(part_name(piece, edge), part_name(piece, f"waist_{END_WORDS[edge]}"))


def _half_outline(name: str, place: GorePlace, gore: HalfGore) -> tuple[Edge, ...]:
    fold, seam = place.front_edge, place.back_edge
    if place.word == "center_back":
        fold, seam = seam, fold
    at_fold, at_seam = END_WORDS[fold], END_WORDS[seam]

    def at(word: str) -> str:
        return part_name(name, word)

    waist = gore.waist.reversed()
    return (
        Edge(
            at(fold),
            Path.line(waist.end, gore.hem.start),
            at(f"waist_{at_fold}"),
            at(f"hem_{at_fold}"),
            "seam" if place.has_seam else "fold",
        ),
        Edge(at("hem"), gore.hem, at(f"hem_{at_fold}"), at(f"hem_{at_seam}"), "hem"),
        Edge(at(seam), gore.seam, at(f"hem_{at_seam}"), at(f"waist_{at_seam}")),
        Edge(at("waist"), waist, at(f"waist_{at_seam}"), at(f"waist_{at_fold}")),
    )


def _whole_outline(name: str, place: GorePlace, gore: HalfGore) -> tuple[Edge, ...]:
    front, back = END_WORDS[place.front_edge], END_WORDS[place.back_edge]

    def at(word: str) -> str:
        return part_name(name, word)

    return (
        Edge(at("hem"), _whole(gore.hem), at(f"hem_{back}"), at(f"hem_{front}"), "hem"),
        Edge(at(place.front_edge), gore.seam, at(f"hem_{front}"), at(f"waist_{front}")),
        Edge(at("waist"), _whole(gore.waist).reversed(), at(f"waist_{front}"), at(f"waist_{back}")),
        Edge(
            at(place.back_edge),
            gore.seam.transformed(_ACROSS).reversed(),
            at(f"waist_{back}"),
            at(f"hem_{back}"),
        ),
    )


def _whole(half: Path) -> Path:
    """A line from the middle out, carried over to the other half: from -x to +x."""
    return half.transformed(_ACROSS).reversed().joined(half)


def _flare_line(gore: HalfGore, below_hip: float) -> Path:
    level = gore.hip.end.y - below_hip
    return Path.line(Point(0.0, level), Point(gore.hip.end.x, level))
