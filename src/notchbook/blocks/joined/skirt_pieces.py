"""The skirt of a dress as pieces, sewn to the bodice along the waist."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import accumulate

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._waist_edges import DART_ROLES
from notchbook.blocks.bodice_pieces.outline import DrawnPiece
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.blocks.skirts.halves import LEAST_SIDE_TAKE_IN, Half
from notchbook.blocks.skirts.straight_pieces import back_piece, cut_data, front_piece, side_seam
from notchbook.pattern import EdgeUse, Expectation, Notch, Pattern, Place, Seam, frozen_map, part_name

_PANELS = ("front", "back")


def waist_parts(drawn: DrawnPiece) -> tuple[float, ...]:
    """The lengths of the waist of a bodice's panel between its darts, from the center outward, mm."""
    waist = part_name(drawn.piece.name, "waist")
    names = drawn.parts.get(waist, (waist,))
    edges = sorted(
        (drawn.piece.edge(name) for name in names),
        key=lambda edge: abs(edge.path.point_at(edge.length / 2.0).x),
    )
    return tuple(edge.length for edge in edges)


def with_skirt(
    pattern: Pattern, step: str, upper: Drafted, half: Half, hem: float, lift: float = 0.0
) -> Pattern:
    """The pattern with the skirt; ``hem`` is the height of the hem over the hip line, below 0, and ``lift``
    how far this side is moved up, mm."""
    names = PanelNames(upper.names.slug, "skirt")
    front = front_piece(names, half.front, hem).lifted(lift)
    back = back_piece(names, half.back, hem, center_is_seam=False).lifted(lift)
    after = pattern.with_pieces(front.piece, back.piece)
    after = after.with_seams(side_seam(names), *(_waist_seam(upper.names, names, which) for which in _PANELS))
    groups = {**after.groups, **front.groups(step), **back.groups(step)}
    after = cut_data(replace(after, groups=frozen_map(groups)), names, half, {"hem": "hem_dress"})
    parts = (waist_parts(upper.front), waist_parts(upper.back))
    notches = (
        notch
        for which, lengths in zip(_PANELS, parts, strict=True)
        for notch in _dart_notches(upper.names, names, which, lengths)
    )
    return after.with_notches(*notches)


def _waist_name(names: PanelNames, which: str) -> str:
    return names.whole(f"{which}_waist")


def _waist_seam(upper: PanelNames, lower: PanelNames, which: str) -> Seam:
    """Bodice to skirt along one panel's waist, from the center."""
    first, second = (
        EdgeUse(names.at(which, "waist"), names.at(which, "waist_center")) for names in (upper, lower)
    )
    return Seam(_waist_name(upper, which), first=(first,), second=(second,), allowance_class="waist")


def _dart_notches(
    upper: PanelNames, lower: PanelNames, which: str, parts: tuple[float, ...]
) -> Iterator[Notch]:
    """Where the darts of bodice and skirt meet in the seam."""
    seam = _waist_name(upper, which)
    for word, distance in zip(DART_ROLES[len(parts) - 1], accumulate(parts), strict=False):
        for names in (upper, lower):
            place = Place(names.at(which, "waist"), names.at(which, "waist_center"), distance)
            yield Notch(names.at(which, "waist", f"{word}_notch"), place, seam=seam, purpose="dart")


def skirt_promises(upper: Drafted, half: Half) -> tuple[Expectation, ...]:
    """The hip with its ease; the waist of the skirt is promised by the seam to the bodice.

    More than that only where the sides lean out as far as they may: then the hip was raised, and it is said.
    """
    lower = PanelNames(upper.names.slug, "skirt")
    body = upper.measures.body["hip_girth"]
    asked = body + upper.measures.eases["hip"].value
    wanted = max(half.hip, asked) if half.take_in <= LEAST_SIDE_TAKE_IN else asked
    return (
        Expectation(
            upper.names.whole("hip_girth"),
            "hip_girth",
            tuple(lower.at(which, "hip_line") for which in _PANELS),
            2,
            body,
            wanted - body,
            reason="the dress must pass over the hip with its ease",
            usual_ease=upper.measures.eases["hip"].usual,
        ),
    )
