"""Whole pieces copied under names of their own, with the seams, notches and cut data between them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from notchbook.pattern import (
    Allowance,
    CutInstruction,
    EdgeUse,
    Group,
    Notch,
    Pattern,
    Piece,
    Seam,
    part_name,
    piece_name,
    split_side,
    with_side,
)
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.pattern import frozen_map
from notchbook.pattern.resolve import expand
from notchbook.style.traced.zip_lined import without_zip_stitches


@dataclass(frozen=True, slots=True)
class Copying:
    """How copies are called and cut: the step's ``slug`` and ``id``, the ``word`` after each title, and the
    ``material``."""

    slug: str
    step: str
    word: str
    material: str


@dataclass(frozen=True, slots=True)
class Copies:
    """The pattern with the copies, the name of each copied thing on its copy, the names of the copies, and
    those of the seams between them."""

    pattern: Pattern
    names: Mapping[str, str]
    pieces: tuple[str, ...]
    seams: tuple[str, ...] = ()


def copied(pattern: Pattern, pieces: Sequence[str], copying: Copying, *, sewn: bool) -> Copies:
    """The pattern with copies of the pieces; ``sewn``: their seams and notches are copied too, and the
    stitches of a zip left out."""
    words = [_word(name, pieces) for name in pieces]
    names: dict[str, str] = {}
    made: list[Piece] = []
    for name, word in zip(pieces, words, strict=True):
        own = with_side(piece_name(copying.slug, word), split_side(name)[1])
        piece = without_zip_stitches(pattern, pattern.pieces[name]) if sewn else pattern.pieces[name]
        copy, here = copy_of(piece, own, copying)
        made.append(copy)
        names |= here
    names |= _group_names(pattern, names)
    after = pattern.with_pieces(*made).with_materials({copying.material: copying.material})
    groups = {
        names[name]: Group(tuple(names[member] for member in group.members), copying.step)
        for name, group in pattern.groups.items()
        if name in names and all(member in names for member in group.members)
    }
    after = replace(after, groups=frozen_map({**after.groups, **groups}))
    if sewn:
        after = _sewn(pattern, after, names, copying.slug)
    seams = tuple(name for name in after.seams if name not in pattern.seams)
    return Copies(after, names, tuple(piece.name for piece in made), seams)


def copy_of(piece: Piece, own: str, copying: Copying) -> tuple[Piece, dict[str, str]]:
    """The copy of one piece under its ``own`` name, and the name of each thing of the piece on it."""
    names = {**_names_on(piece, own), piece.name: own}
    return _copy(piece.renamed(names.__getitem__), copying), names


def _word(name: str, pieces: Sequence[str]) -> str:
    """The word of the piece; with that of its block where two are called alike."""
    word, side = last_word(name), split_side(name)[1]
    alike = [other for other in pieces if (last_word(other), split_side(other)[1]) == (word, side)]
    return word if len(alike) == 1 else f"{instance_of(name)}_{word}"


def _names_on(piece: Piece, own: str) -> dict[str, str]:
    """For each name on the piece its name on the copy; the step that gave it is said where two are alike."""
    names: dict[str, str] = {}
    taken: set[str] = set()
    base = split_side(own)[0]
    for name in dict.fromkeys(_all_names(piece)):
        words, side = split_side(name)
        parts = words.split("/")[1:]
        made = with_side(part_name(base, *parts), side)
        if made in taken:
            made = with_side(part_name(base, f"{instance_of(name)}_{parts[0]}", *parts[1:]), side)
        taken.add(made)
        names[name] = made
    return names


def _all_names(piece: Piece) -> list[str]:
    """Every name on the piece, its own left out; mouths, and edges that are drawn in, may be groups."""
    found = [name for name in piece.names() if name != piece.name]
    found += [intake.mouth for intake in piece.intakes]
    found += [intake.edge for intake in piece.intakes if intake.edge]
    for dart in piece.inner_darts:
        found += [dart.center_leg, dart.side_leg, dart.upper_point, dart.lower_point]
    return found


def _group_names(pattern: Pattern, names: Mapping[str, str]) -> dict[str, str]:
    """The names of the groups all of whose members were copied, onto one copy or several."""
    found: dict[str, str] = {}
    for name in pattern.groups:
        members = expand(pattern, name)[0]
        if name in names or not members or not all(member in names for member in members):
            continue
        owner = split_side(names[members[0]])[0].split("/", 1)[0]
        words, side = split_side(name)
        own = with_side(part_name(owner, *words.split("/")[1:]), side)
        if own not in names.values() and own not in found.values():
            found[name] = own
    return found


def _copy(piece: Piece, copying: Copying) -> Piece:
    times = piece.instructions[0].times if piece.instructions else 1
    return replace(
        piece,
        title=f"{piece.title} {copying.word}",
        instructions=(CutInstruction(copying.material, times),),
        rule=copying.slug,
    )


def _sewn(before: Pattern, after: Pattern, names: Mapping[str, str], slug: str) -> Pattern:
    """The seams between the copies, their notches, allowances and corners."""
    seams: dict[str, str] = {}
    for seam in before.seams.values():
        uses = (*seam.first, *seam.second)
        if all(use.edge in names and use.starts_at in names for use in uses):
            base, side = split_side(seam.name)
            word = last_word(base)
            if with_side(part_name(slug, word), side) in seams.values():
                word = f"{instance_of(seam.name)}_{word}"
            seams[seam.name] = with_side(part_name(slug, word), side)
            members = [edge for use in uses for edge in expand(before, use.edge)[0]]
            stretches = any(before.piece_of(edge).stretches for edge in members)
            after = after.with_seams(_renamed(seam, names, seams[seam.name], stretches=stretches))
    notches = [
        _notch(notch, names, seams)
        for notch in before.notches.values()
        if notch.place.edge in names and notch.place.from_point in names and notch.place.notch is None
    ]
    after = after.with_notches(*notches).with_allowances(allowances_on(before, names))
    return after.with_corners({names[name]: style for name, style in before.corners.items() if name in names})


def allowances_on(pattern: Pattern, names: Mapping[str, str]) -> dict[str, Allowance]:
    """What is said of the allowances of what was copied, under the names of the copies."""
    return {names[name]: allowance for name, allowance in pattern.allowances.items() if name in names}


def _renamed(seam: Seam, names: Mapping[str, str], name: str, *, stretches: bool) -> Seam:
    """The seam between copies. What the iron stretches in cloth is eased in where a lining is longer: lining
    takes no shape from the iron (common practice, no source)."""

    def uses(run: tuple[EdgeUse, ...]) -> tuple[EdgeUse, ...]:
        return tuple(EdgeUse(names[use.edge], names[use.starts_at], use.side) for use in run)

    gives = seam.gives if stretches else "longer"
    return replace(seam, name=name, first=uses(seam.first), second=uses(seam.second), gives=gives)


def _notch(notch: Notch, names: Mapping[str, str], seams: Mapping[str, str]) -> Notch:
    owner = split_side(names[notch.place.edge])[0].split("/", 1)[0]
    words, side = split_side(notch.name)
    place = replace(notch.place, edge=names[notch.place.edge], from_point=names[notch.place.from_point])
    own = with_side(part_name(owner, *words.split("/")[1:]), side)
    return replace(notch, name=own, place=place, seam=seams.get(notch.seam or ""))
