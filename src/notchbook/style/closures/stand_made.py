"""A button stand put onto its pieces: outlines, seams, allowances, center notches and the order of work."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeUse,
    Notch,
    Pattern,
    Place,
    Seam,
    frozen_map,
    locate,
    part_name,
    piece_name,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.style.closures.buttons_laid import ButtonSize
from notchbook.style.closures.figures import HOLE_BEFORE_EDGE, HOLE_BEYOND_CENTER, STAND_BEYOND_HALF
from notchbook.style.closures.stand_facing import facing_seam, stand_facing
from notchbook.style.closures.stand_outline import Joined, StandDrawn, StandSize, stand_drawn
from notchbook.style.closures.straight_center import StraightCenter, seams_to_itself
from notchbook.style.traced.allowance_of import allowance_of


@dataclass(frozen=True, slots=True)
class StandMaking:
    """How a stand is named and made: one name per piece, its size, which side lies over, how many buttons."""

    slug: str
    owners: tuple[str, ...]
    size: StandSize
    over: Literal["right", "left"]
    number: int


@dataclass(frozen=True, slots=True)
class StandChange:
    """The pattern with the stand, the names that are gone with the reason, and the ends of facings that were
    drawn with a wave to meet at a joint."""

    pattern: Pattern
    removals: Mapping[str, str]
    waves: Mapping[str, int]


def stand_size(button: ButtonSize, width: float, facing: float, *, is_cut_on: bool) -> StandSize:
    """The size, where it holds the button; ``facing`` is 0 where there is none.

    StepRefused ``stand-too-narrow``, ``stand-facing-too-narrow``.
    """
    least = button.diameter / 2.0 + STAND_BEYOND_HALF.value
    if button.holes == "across":
        least = max(least, HOLE_BEYOND_CENTER.value + HOLE_BEFORE_EDGE.value)
    if width < least - 1e-6:
        raise StepRefused("stand-too-narrow", width=width, least=least, button=button.diameter)
    needed = width + button.hole if button.holes == "across" else width + button.diameter / 2.0
    if 0.0 < facing < needed:
        raise StepRefused("stand-facing-too-narrow", width=facing, least=needed)
    return StandSize(width, facing, is_cut_on)


def with_stand(pattern: Pattern, centers: Sequence[StraightCenter], making: StandMaking) -> StandChange:
    """The pattern with the stand on every piece of the center, sewn on where the pieces are sewn."""
    gone = [name for center in centers for name in seams_to_itself(pattern, (center.edge.name,))]
    named = {center.edge.name for center in centers}
    notches = [
        notch.name for notch in pattern.notches.values() if locate(pattern, notch.place).edge.name in named
    ]
    kept = {name: one for name, one in pattern.allowances.items() if name not in named}
    after = replace(pattern, allowances=frozen_map(kept))
    after = after.with_seams(without=gone).with_notches(without=notches)
    drawn: list[StandDrawn] = []
    last = len(centers) - 1
    for index, (center, owner) in enumerate(zip(centers, making.owners, strict=True)):
        stand = stand_drawn(center, owner, making.size, Joined(index > 0, index < last))
        drawn.append(stand)
        after = after.with_pieces(stand.piece).with_allowances(_allowances(pattern, stand, owner, making))
        after = after.with_notches(*_center_notches(stand, owner))
        if making.size.facing > 0.0 and not making.size.is_cut_on:
            after = _faced(after, pattern, stand, owner, making.slug)
    for index in range(len(drawn) - 1):
        after = after.with_seams(_joint(pattern, making.slug, index, drawn[index], drawn[index + 1]))
    sewn = tuple(name for name in after.seams if name not in pattern.seams)
    after = after.with_operations(*_operations(making, drawn, sewn))
    meeting = pairwise(drawn) if making.size.cut_on > 0.0 else ()
    waves = [edges[-1].name for one, two in meeting for edges in (one.lower, two.upper)]
    removals = dict.fromkeys([*gone, *notches], "the center opens with buttons")
    return StandChange(after, removals, dict.fromkeys(waves, 1))


def _faced(after: Pattern, before: Pattern, stand: StandDrawn, owner: str, slug: str) -> Pattern:
    """The pattern with a facing of its own behind the stand."""
    facing = stand_facing(stand, piece_name(slug, f"{last_word(owner)}_facing"))
    given = {part_name(facing.name, "facing_edge"): Allowance("neatened_edge")}
    for word, beside in zip(("facing_top", "facing_bottom"), stand.beside, strict=True):
        said = allowance_of(before, beside.name)
        if said is not None:
            given[part_name(facing.name, word)] = said
    given[part_name(facing.name, "lap")] = Allowance("facing_edge")
    after = after.with_pieces(facing).with_seams(facing_seam(slug, owner, facing.name))
    return after.with_allowances(given).with_materials({"fusible": "fusible"})


def _allowances(pattern: Pattern, stand: StandDrawn, owner: str, making: StandMaking) -> dict[str, Allowance]:
    """The ends as what they carry on; a facing's free edge neatened, an edge to be faced turned."""
    found: dict[str, Allowance] = {}
    for edges, beside in zip((stand.upper, stand.lower), stand.beside, strict=True):
        said = allowance_of(pattern, beside.name)
        if said is not None:
            found |= dict.fromkeys((edge.name for edge in edges), said)
    if making.size.cut_on > 0.0:
        return {**found, part_name(owner, "facing_edge"): Allowance("neatened_edge")}
    return {**found, part_name(owner, "lap"): Allowance("facing_edge")}


def _center_notches(stand: StandDrawn, owner: str) -> Iterator[Notch]:
    """The center marked at the neck and at the lower end, where the outline shows it no more."""
    for word, edges in (("top", stand.upper), ("bottom", stand.lower)):
        edge = edges[0]
        corner = edge.start  # both ends are walked from the center outward
        yield Notch(part_name(owner, f"center_{word}_notch"), Place(edge.name, corner, 0.0), purpose="center")


def _joint(pattern: Pattern, slug: str, index: int, upper: StandDrawn, lower: StandDrawn) -> Seam:
    """The stands of two pieces sewn to each other as the pieces are, from the center outward."""
    runs = (_uses(upper.lower), _uses(lower.upper))
    name = part_name(slug, "lap" if index == 0 else f"lap_{index + 1}")
    said = allowance_of(pattern, upper.beside[1].name)
    return Seam(name, *runs, allowance_class="plain" if said is None else said.allowance_class)


def _uses(edges: Sequence[Edge]) -> tuple[EdgeUse, ...]:
    return tuple(EdgeUse(edge.name, edge.start) for edge in edges)


def _operations(
    making: StandMaking, drawn: Sequence[StandDrawn], sewn: tuple[str, ...]
) -> Iterator[Operation]:
    pieces = tuple(stand.piece.name for stand in drawn)
    under = "left" if making.over == "right" else "right"
    if making.size.cut_on > 0.0:
        folded = part_name(making.slug, "facing_folded")
        at = tuple(part_name(one, "fold_line") for one in making.owners)
        yield Operation(folded, "closures", _folded_back(drawn), at, sewn)
    count = "one buttonhole" if making.number == 1 else f"{making.number} buttonholes"
    buttons = "the button" if making.number == 1 else "the buttons"
    holes = part_name(making.slug, "buttonholes")
    yield Operation(holes, "finish", f"Work {count} in the wearer's {making.over} side.", pieces)
    text = f"Lay center on center and sew {buttons} to the wearer's {under} side."
    yield Operation(part_name(making.slug, "buttons"), "finish", text, pieces, (holes,))


def _folded_back(drawn: Sequence[StandDrawn]) -> str:
    """What is done with the facings cut on. The upper ends lie in the seam of a collar or a band, which may
    come after the stand; the lower ones are sewn where they come to a hem."""
    at_hem = "sew their lower ends along the hem, " if drawn[-1].beside[1].kind == "hem" else ""
    return (
        f"Fold the facings right sides together on the fold line, {at_hem}sew their upper ends where no "
        f"collar or band is sewn on, and turn."
    )
