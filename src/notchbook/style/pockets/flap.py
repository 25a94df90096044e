"""A flap over a pocket: its outer side, and an under side smaller by the turn of the cloth."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    InternalLine,
    Mark,
    Pattern,
    Piece,
    Seam,
    part_name,
    piece_name,
    run_length,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.pockets.figures import DRILL_INSIDE
from notchbook.style.pockets.parts import Made, part, walked
from notchbook.style.pockets.placing import Placed
from notchbook.style.pockets.shape import Sizes, sides_of

_UPPER = "opening"
"""The side of the shape along which a flap is sewn on."""

_LEAST_TURNS = 8.0
"""So many times the turn of its cloth a flap is wide at the least: the turns of both ends are a quarter of
it then. Own judgment."""


@dataclass(frozen=True, slots=True)
class FlapAsked:
    """A flap as asked for: its sizes, where it begins from the near end of the opening (along it, and below
    it or with a minus above), the turn of the cloth (mm), the material of its under side, and whether it is
    interfaced. ``order`` tells how it is sewn on, ``line`` names the line along which, ``after`` what must be
    done before."""

    sizes: Sizes
    begins: Point
    turn: float
    under: str
    interfaced: bool
    order: str
    line: str
    after: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Flap:
    """The pattern with a flap, the line along which it is sewn to its piece, and drill holes at its ends."""

    pattern: Pattern
    line: InternalLine
    marks: tuple[Mark, ...]


def with_flap(pattern: Pattern, slug: str, placed: Placed, asked: FlapAsked) -> Flap:
    """Add the flap with its under side, the seam round it, and its lines of the sewing order.

    StepRefused ``pocket-flap-small`` where it is too narrow to be turned.
    """
    least = _LEAST_TURNS * asked.turn
    if asked.sizes.width < least:
        raise StepRefused("pocket-flap-small", width=asked.sizes.width, least=least)
    role = last_word(placed.piece.name)
    outer = _outer(slug, role, placed, asked)
    under = _under(slug, role, placed, asked)
    seam = _seam(pattern.with_pieces(outer, under), slug, (under, outer))
    enclosed = {edge.name: Allowance("pocket_flap") for piece in (outer, under) for edge in piece.outline}
    sewn_on = {part_name(piece.name, _UPPER): Allowance("plain") for piece in (outer, under)}
    after = pattern.with_pieces(outer, under).with_seams(seam).with_allowances({**enclosed, **sewn_on})
    after = after.with_materials({asked.under: after.materials.get(asked.under, asked.under)})
    if asked.interfaced:
        after = after.with_materials({"fusible": "fusible"})
    owner = piece_name(slug, role)
    begin = placed.at(asked.begins.x, asked.begins.y)
    end = placed.at(asked.begins.x + asked.sizes.width, asked.begins.y)
    line = InternalLine(asked.line, Path.line(begin, end), "placement")
    inside = (end - begin).unit() * DRILL_INSIDE.value
    marks = (
        Mark(part_name(owner, "near_flap_drill"), begin + inside, "drill"),
        Mark(part_name(owner, "far_flap_drill"), end - inside, "drill"),
    )
    return Flap(after.with_operations(*_operations(slug, outer, seam, asked)), line, marks)


def _outer(slug: str, role: str, placed: Placed, asked: FlapAsked) -> Piece:
    cut = [CutInstruction("self"), *([CutInstruction("fusible")] if asked.interfaced else [])]
    made = Made(piece_name(slug, f"{role}_flap"), f"{placed.piece.title} flap", tuple(cut))
    sides = sides_of(placed, asked.sizes, asked.begins)
    return part(placed, sides, {side.word: "seam" for side in sides}, made)


def _under(slug: str, role: str, placed: Placed, asked: FlapAsked) -> Piece:
    """The side of the flap toward the body, less by the turn all round but at the upper edge."""
    title = f"{placed.piece.title} flap under"
    made = Made(piece_name(slug, f"{role}_flap_under"), title, (CutInstruction(asked.under),))
    sizes, turn = asked.sizes, asked.turn
    smaller = Sizes(sizes.width - 2.0 * turn, sizes.depth - turn, sizes.bottom, sizes.corner)
    sides = sides_of(placed, smaller, asked.begins + Point(turn, 0.0))
    return part(placed, sides, {side.word: "seam" for side in sides}, made)


def _seam(pattern: Pattern, slug: str, pieces: tuple[Piece, Piece]) -> Seam:
    """Under side to outer side round the free edges; the outer one is longer and rolls under."""
    runs = []
    for piece in pieces:
        words = [last_word(edge.name) for edge in piece.outline if last_word(edge.name) != _UPPER]
        ordered = words if words[0] == "near" else words[::-1]
        runs.append(walked(piece, ordered, "near_upper"))
    ease = run_length(pattern, runs[1]) - run_length(pattern, runs[0])
    name = part_name(slug, f"{last_word(pieces[1].name)}_edge")
    return Seam(name, runs[0], runs[1], ease, allowance_class="pocket_flap", seam_class=TURNED_SEAM)


def _operations(slug: str, outer: Piece, seam: Seam, asked: FlapAsked) -> tuple[Operation, ...]:
    turned = Operation(
        part_name(slug, "flap_turned"),
        "prepare",
        "Trim the allowance round the flap, turn it right side out, press the edge so that the under side "
        "does not show, and topstitch as wanted.",
        (outer.name,),
        (seam.name,),
    )
    at = part_name(outer.name, _UPPER), asked.line
    name = part_name(slug, "flap_sewn")
    return turned, Operation(name, "pockets", asked.order, at, (turned.name, *asked.after))
