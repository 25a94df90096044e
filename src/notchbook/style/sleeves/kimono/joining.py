"""A panel with its sleeve cut on: the outline put together, the names, and how it is sewn."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeKind,
    EdgeUse,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.style.sleeves.crossing import crosses
from notchbook.style.sleeves.hems import hem_class
from notchbook.style.sleeves.kimono.lines import ArmLines
from notchbook.style.sleeves.kimono.panel import ArmPanel

_BALANCE = (0.42, 0.58)
"""Shares along the seams over and under the arm at which they are notched, off the middle. Common practice,
no source."""


_CLEAR = 12.0
"""mm that a notch stays off the end of the side seam. Own judgment."""


@dataclass(frozen=True, slots=True)
class CutOn:
    """A panel with its sleeve: the piece and the names of the new edges; with a gusset both sides of its
    slash, that toward the sleeve first."""

    piece: Piece
    over: Edge
    hem: Edge
    under: Edge
    slash: tuple[Edge, Edge] | None


def cut_on(slug: str, panel: ArmPanel, lines: ArmLines) -> CutOn:
    """The panel with the sleeve in place of its armhole.

    StepRefused ``kimono-gusset-large``, ``kimono-crosses``. The sides of a slash are cut as the legs of a
    dart: the piece is cut on over them, and slit between them when it is sewn.
    """
    owner = piece_name(slug, last_word(panel.piece.name))

    def edge(word: str, path: Path, ends: tuple[str, str], kind: EdgeKind = "seam") -> Edge:
        return Edge(part_name(owner, word), path, *ends, kind)

    hem_ends = part_name(owner, "hem_upper"), part_name(owner, "hem_lower")
    over = edge("overarm", lines.over, (panel.tip_name, hem_ends[0]))
    hem = edge("hem", lines.hem, hem_ends, "hem")
    side = panel.side.between(lines.reached, panel.side.length)
    slash: tuple[Edge, Edge] | None = None
    inner = panel.underarm_name
    if lines.slash is not None:
        inner, point = part_name(owner, "slash_end"), part_name(owner, "slash_point")
        slash = (
            edge("sleeve_slash", Path.line(lines.under.end, lines.slash), (inner, point), "leg"),
            edge("side_slash", Path.line(lines.slash, side.start), (point, panel.underarm_name), "leg"),
        )
    under = edge(
        "underarm_seam", lines.under.with_end(lines.under.end if slash else side.start), (hem_ends[1], inner)
    )
    down = replace(panel.side_edge, path=side if _starts(panel) else side.reversed())
    new = [over, hem, under, *(slash or ())]
    ordered = new if panel.runs_down else [one.reversed() for one in reversed(new)]
    instead = {panel.armhole.name: ordered, down.name: [down]}
    outline = tuple(new_edge for one in panel.piece.outline for new_edge in instead.get(one.name, [one]))
    piece = replace(panel.piece, outline=outline)
    if slash is not None:
        path = Path.line(lines.under.end.lerp(side.start, 0.5), slash[0].path.end)
        line = InternalLine(part_name(owner, "slash_line"), path.between(0.0, path.length - 3.0), "cut_line")
        sewn = [
            InternalLine(part_name(owner, f"{word}_stitch_line"), leg.path, "stitch_line")
            for word, leg in zip(("sleeve", "side"), slash, strict=True)
        ]
        piece = replace(piece, lines=(*piece.lines, line, *sewn))
    _require_drawn(piece, slash, new)
    return CutOn(piece, over, hem, under, slash)


def _require_drawn(piece: Piece, slash: tuple[Edge, Edge] | None, new: list[Edge]) -> None:
    """StepRefused ``kimono-crosses`` where the sleeve crosses itself or the panel, ``kimono-gusset-large``
    where a slash does, or runs into a dart."""
    legs = [leg.name for leg in slash or ()]
    if crosses(piece, [edge.name for edge in new if edge.name not in legs], but=legs):
        raise StepRefused("kimono-crosses", piece=spoken(piece.name))
    if slash is not None and crosses(piece, legs):
        raise StepRefused("kimono-gusset-large", piece=spoken(piece.name), gusset=slash[0].length)


def _starts(panel: ArmPanel) -> bool:
    """Whether the side seam runs down from the underarm in the outline."""
    return panel.side_edge.start == panel.underarm_name


def arm_seams(slug: str, front: CutOn, back: CutOn) -> Iterator[Seam]:
    """The seams over and under the arm, from the shoulder and from the side."""
    yield Seam(
        part_name(slug, "overarm_seam"),
        (EdgeUse(front.over.name, front.over.start),),
        (EdgeUse(back.over.name, back.over.start),),
        allowance_class="shoulder",
    )
    yield Seam(
        part_name(slug, "underarm_seam"),
        (EdgeUse(front.under.name, front.under.end),),
        (EdgeUse(back.under.name, back.under.end),),
        allowance_class="side",
    )


def arm_notches(slug: str, front: CutOn, back: CutOn) -> Iterator[Notch]:
    """A pair over the arm and one under it, double there."""
    for cut in (front, back):
        over = Place(cut.over.name, cut.over.start, _BALANCE[0], "fraction")
        under = Place(cut.under.name, cut.under.end, _BALANCE[1], "fraction")
        seams = part_name(slug, "overarm_seam"), part_name(slug, "underarm_seam")
        yield Notch(part_name(cut.over.name, "arm_notch"), over, "single", seams[0], "balance")
        yield Notch(part_name(cut.under.name, "arm_notch"), under, "double", seams[1], "balance")


def side_notches(pattern: Pattern, panel: ArmPanel, lines: ArmLines) -> Iterator[Notch]:
    """The notches of the side seam that are counted from the underarm, on the cloth where they stood; one
    that stood on what the sleeve took comes to the middle of what is left."""
    left = panel.side.length - lines.reached
    for notch in pattern.notches.values():
        if notch.place.from_point != panel.underarm_name or notch.place.edge == panel.armhole.name:
            continue
        amount = notch.place.amount - lines.reached
        if notch.place.measure == "distance" and notch.place.notch is None:
            kept = amount if amount > _CLEAR else left / 2.0
            yield replace(notch, place=replace(notch.place, amount=kept))


def with_hems(pattern: Pattern, front: CutOn, back: CutOn) -> Pattern:
    """Both hems turned up as those of a sleeve."""
    hem = Allowance(hem_class(front.hem.path, back.hem.path))
    return pattern.with_allowances({cut.hem.name: hem for cut in (front, back)})
