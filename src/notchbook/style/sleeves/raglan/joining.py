"""What becomes of the names of a bodice and its sleeve in a raglan, and how the raglan is sewn."""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.pattern import (
    EdgeUse,
    Notch,
    NotchKind,
    Pattern,
    Place,
    Seam,
    child_name,
    part_name,
    sewn_length,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import place_distance
from notchbook.style.sleeves.found import HALVES, FoundSleeve
from notchbook.style.sleeves.raglan.laid import Laid
from notchbook.style.sleeves.raglan.pieces import Half

_BALANCE = 0.55
"""Share along each raglan line, from the armhole, at which it is notched. Common practice, no source."""

_OVER = {"shoulder_notch": 0.0, "upper_arm_notch": 0.3, "lower_arm_notch": 0.62}
"""Shares along the line over the arm at which it is notched: at the end of the shoulder, whose ease ends
there, and below it. Common practice, no source."""

_TAKEN = "the shoulder of the bodice is a part of the sleeve"


def raglan_splits(
    sleeve: FoundSleeve, both: tuple[Laid, Laid], halves: tuple[Half, Half], *, is_parted: bool
) -> dict[str, tuple[str, ...]]:
    """What became several, or only a part of what it was; ``is_parted``: the sleeve is in two pieces."""
    splits: dict[str, tuple[str, ...]] = {}
    if is_parted:
        splits[sleeve.piece.name] = (halves[1].sleeve.name, halves[0].sleeve.name)
        for name in (sleeve.name("hem"), *(line.name for line in sleeve.piece.lines)):
            splits[name] = tuple(child_name(name, role) for role in ("back", "front"))
    for laid, cap in zip(both, (sleeve.cap[0], sleeve.cap[-1]), strict=True):
        taken = laid.panel
        neck = [child_name(taken.neck.name, role) for role in ("center", "side")]
        splits[taken.neck.name] = tuple(neck if taken.goes_down else reversed(neck))
        splits[taken.armhole.name] = (child_name(taken.armhole.name, "below"),)
        splits[cap.name] = (child_name(cap.name, "below"),)
    return splits


def raglan_gone(
    pattern: Pattern, sleeve: FoundSleeve, both: tuple[Laid, Laid]
) -> tuple[dict[str, str], list[str]]:
    """The names that go with the upper armhole and cap, and the notches among them."""
    edges = {edge.name for edge in sleeve.cap} | {laid.panel.armhole.name for laid in both}
    up = {edge.name: both[0].up for edge in (sleeve.cap[0], both[0].panel.armhole)}
    up |= {edge.name: both[1].up for edge in (sleeve.cap[-1], both[1].panel.armhole)}
    underarms = {"underarm", "underarm_front", "underarm_back"}
    notches: list[str] = []
    for notch in pattern.notches.values():
        if notch.place.edge not in edges:
            continue
        distance = place_distance(pattern, notch.place)
        if last_word(notch.place.from_point) not in underarms:
            distance = sewn_length(pattern, notch.place.edge) - distance
        if distance > up[notch.place.edge]:
            notches.append(notch.name)
    return dict.fromkeys([sleeve.name("cap_top"), *notches], _TAKEN), notches


def raglan_seams(
    pattern: Pattern, slug: str, sleeve: FoundSleeve, halves: tuple[Half, Half]
) -> Iterator[Seam]:
    """The armhole seams go on along the raglan lines to the neck, without ease; the seam over the arm."""
    for which, half in zip(HALVES, halves, strict=True):
        seam = pattern.seams[part_name(sleeve.slug, f"{which}_armhole")]
        body, arm = (EdgeUse(line.name, line.start) for line in half.lines)
        yield replace(
            seam, first=(*seam.first, body), second=(*seam.second, arm), ease=0.0, ease_between=None
        )
    front, back = ((EdgeUse(half.over.name, half.over.start),) for half in halves)
    yield Seam(part_name(slug, "overarm_seam"), front, back, allowance_class="shoulder")


def raglan_notches(
    slug: str, sleeve: FoundSleeve, halves: tuple[Half, Half], *, is_parted: bool
) -> Iterator[Notch]:
    """A pair on each raglan line, single in front and double behind, and three pairs over the arm where the
    sleeve is parted there: the sides of a dart have no allowance to notch."""
    kinds: tuple[NotchKind, NotchKind] = ("single", "double")
    for which, half, kind in zip(HALVES, halves, kinds, strict=True):
        seam = part_name(sleeve.slug, f"{which}_armhole")
        for line in half.lines:
            for word, along in (("armhole_notch", 0.0), ("raglan_notch", _BALANCE)):
                place = Place(line.name, line.start, along, "fraction")
                yield Notch(part_name(line.name, word), place, kind, seam, "raglan")
        for word, share in _OVER.items() if is_parted else ():
            place = Place(half.over.name, half.over.start, share, "fraction")
            name = part_name(half.over.name, word)
            yield Notch(name, place, "single", part_name(slug, "overarm_seam"), "balance")
