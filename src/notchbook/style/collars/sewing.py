"""A collar sewn: its layers to each other and to the neck, what is notched, and what is cut outside."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Notch,
    Pattern,
    Place,
    Seam,
    part_name,
    run_length,
)
from notchbook.pattern.run_place import place_on
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.collars.neck import Joint, Neck, members_of


def with_neck_sewn(pattern: Pattern, neck: Neck) -> Pattern:
    """The pattern with the edges of the neck sewn and no longer turned or left free."""
    given = dict.fromkeys((use.edge for use in neck.uses), Allowance("neckline"))
    return edges_sewn(pattern, set(members_of(neck))).with_allowances(given)


def edges_sewn(pattern: Pattern, members: Collection[str]) -> Pattern:
    """The pattern with these edges sewn, whatever was done to them before."""
    carriers = dict.fromkeys(pattern.carriers[member] for member in sorted(members))
    changed = [
        replace(
            pattern.pieces[name],
            outline=tuple(
                replace(edge, kind="seam") if edge.name in members else edge
                for edge in pattern.pieces[name].outline
            ),
        )
        for name in carriers
    ]
    return pattern.with_pieces(*changed)


def neck_seam(slug: str, word: str, own: tuple[EdgeUse, ...], neck: Neck) -> Seam:
    """The neck of a layer, from its front end on, sewn to the neck of the garment, its allowances between
    the layers."""
    return Seam(part_name(slug, word), own, neck.uses, 0.0, "neckline", TURNED_SEAM)


def neck_notches(pattern: Pattern, own: Sequence[EdgeUse], neck: Neck, seam: str | None) -> list[Notch]:
    """Marks on the neck edge of a layer where the shoulder and other seams come to lie, and one on the front
    neck, in every size; with their mates on the garment where ``seam`` is named."""
    length = run_length(pattern, tuple(own))
    share = length / neck.length
    marks: list[Notch] = []
    words = _joint_words(neck.joints)
    for joint, word in zip(neck.joints, words, strict=True):
        place = place_on(pattern, own, joint.along * share)
        serves = None if joint.is_seam else seam
        purpose = "shoulder" if joint.is_shoulder else "seam"
        marks.append(Notch(part_name(own[0].edge, word), place, seam=serves, purpose=purpose))
        if serves is not None:
            mate = neck.place(joint.along)
            marks.append(Notch(part_name(serves, word), mate, seam=serves, purpose=purpose))
    balance = _balance(neck)
    place = place_on(pattern, own, balance * share)
    marks.append(Notch(part_name(own[0].edge, "balance_notch"), place, seam=seam, purpose="balance"))
    if seam is not None:
        mate = neck.place(balance)
        marks.append(Notch(part_name(seam, "balance_notch"), mate, seam=seam, purpose="balance"))
    return marks


def _balance(neck: Neck) -> float:
    """Where the front neck is notched, mm: half way to the shoulder, or to the first seam before it, so that
    the mark keeps clear of every other one on every body."""
    return min((joint.along for joint in neck.joints), default=neck.length) / 2.0


def _joint_words(joints: tuple[Joint, ...]) -> list[str]:
    """What the marks are called: the shoulder, and the other seams in their order."""
    words, count = [], 0
    for joint in joints:
        if joint.is_shoulder:
            words.append("shoulder_notch")
            continue
        count += 1
        words.append("seam_notch" if count == 1 else f"seam_notch_{count}")
    return words


def outer_seam(pattern: Pattern, slug: str, pieces: tuple[str, str], run: Sequence[tuple[str, str]]) -> Seam:
    """The outer edges of the under and the upper layer: ``run`` holds each edge with the corner where it is
    come to, from the front of the neck on. The upper is longer by the turn of the cloth."""
    first, second = (
        tuple(EdgeUse(part_name(piece, word), part_name(piece, corner)) for word, corner in run)
        for piece in pieces
    )
    ease = run_length(pattern, second) - run_length(pattern, first)
    return Seam(part_name(slug, "outer"), first, second, ease, "collar_edge", TURNED_SEAM)


@dataclass(frozen=True, slots=True)
class NeckLayer:
    """The neck edge of a layer, walked from the shoulder on, and the word of its seam."""

    word: str
    use: EdgeUse


def neck_layers(pieces: tuple[str, str], corner: str) -> tuple[NeckLayer, NeckLayer]:
    """Those of an under and an upper collar."""
    under, upper = (EdgeUse(part_name(piece, "neck_edge"), part_name(piece, corner)) for piece in pieces)
    return NeckLayer("neck", under), NeckLayer("upper_neck", upper)


def back_neck_sewn(pattern: Pattern, neck: Neck, slug: str, layers: tuple[NeckLayer, NeckLayer]) -> Pattern:
    """An under and an upper layer sewn to the back neck from the shoulder on, notched half way."""
    mate = neck.behind
    behind = Neck(pattern, mate, mate, 0.0, neck.back, (), {})
    after = edges_sewn(pattern, set(members_of(behind)))
    after = after.with_allowances(dict.fromkeys((use.edge for use in mate), Allowance("neckline")))
    seam = part_name(slug, "neck")
    for layer in layers:
        after = after.with_seams(neck_seam(slug, layer.word, (layer.use,), behind))
        serves = seam if layer.word == "neck" else None
        place = Place(layer.use.edge, layer.use.starts_at, 0.5, "fraction")
        name = part_name(layer.use.edge, "balance_notch")
        after = after.with_notches(Notch(name, place, seam=serves, purpose="balance"))
    half = behind.place(neck.back / 2.0)
    return after.with_notches(Notch(part_name(seam, "balance_notch"), half, seam=seam, purpose="balance"))
