"""What becomes of the names of a sleeve that is cut in two, and how its two pieces are sewn."""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.pattern import EdgeUse, Notch, NotchKind, Pattern, Place, Seam, child_name, part_name
from notchbook.pattern.seam import Gives
from notchbook.style.sleeves.found import FoundSleeve
from notchbook.style.sleeves.two_piece.panels import Panels
from notchbook.style.sleeves.two_piece.seam_lines import SeamLine

Became = tuple[
    dict[str, tuple[str, ...]], dict[str, tuple[str, ...]], dict[str, str], tuple[str, ...], tuple[str, ...]
]
"""Splits, merges and removals as a step declares them, then the notches and the seams that go."""

_GONE = "the underarm seam is closed in the under sleeve"


def what_became(pattern: Pattern, sleeve: FoundSleeve, panels: Panels) -> Became:
    """What became of every name of the sleeve."""
    front, back = sleeve.cap
    hem, biceps, elbow = sleeve.name("hem"), sleeve.name("biceps_line"), sleeve.name("elbow_line")
    splits: dict[str, tuple[str, ...]] = {
        sleeve.piece.name: (panels.top.name, panels.under.name),
        front.name: (child_name(front.name, "below"), child_name(front.name, "above")),
        back.name: (child_name(back.name, "above"), child_name(back.name, "below")),
        hem: (child_name(hem, "top"), child_name(hem, "under")),
        biceps: tuple(child_name(biceps, role) for role in ("under_back", "top", "under_front")),
        elbow: (child_name(elbow, "top"), child_name(elbow, "under")),
    }
    merges: dict[str, tuple[str, ...]] = {back.end: (front.start,)}
    seam = part_name(sleeve.slug, "sleeve_seam")
    notches = tuple(notch.name for notch in pattern.notches.values() if notch.serves(seam))
    kept = {*splits, *merges}
    living = {*panels.top.names(), *panels.under.names()}
    gone = [name for name in sleeve.piece.names() if name not in kept and name not in living]
    return splits, merges, dict.fromkeys([*gone, *notches, seam], _GONE), notches, (seam,)


def sewn_anew(pattern: Pattern, sleeve: FoundSleeve) -> Pattern:
    """Armhole seams and notches that were counted from the back end of the cap: its two ends are one."""
    old, now = sleeve.cap[1].end, sleeve.cap[0].start

    def uses(run: tuple[EdgeUse, ...]) -> tuple[EdgeUse, ...]:
        return tuple(replace(use, starts_at=now) if use.starts_at == old else use for use in run)

    seams = [replace(one, first=uses(one.first), second=uses(one.second)) for one in pattern.seams.values()]
    notches = [
        replace(notch, place=replace(notch.place, from_point=now))
        for notch in pattern.notches.values()
        if notch.place.from_point == old
    ]
    return pattern.with_seams(*seams).with_notches(*notches)


def arm_seams(pattern: Pattern, slug: str, panels: Panels) -> Pattern:
    """The seams at forearm and hind arm with the notches between which they differ, and the mark at which the
    side seam comes to lie."""
    rows: tuple[tuple[str, tuple[SeamLine, SeamLine], NotchKind], ...] = (
        ("forearm", panels.forearm, "single"),
        ("hind_arm", panels.hind_arm, "double"),
    )
    after = pattern
    for word, pair, kind in rows:
        seam = _seam(slug, panels, word, pair)
        after = after.with_seams(seam).with_notches(*_elbow_notches(seam, pair, kind))
    cap = panels.under.outline[3]
    mark = Notch(
        part_name(panels.under.name, "side_notch"), Place(cap.name, cap.start, 0.0), purpose="side seam"
    )
    return after.with_notches(mark)


def _seam(slug: str, panels: Panels, word: str, pair: tuple[SeamLine, SeamLine]) -> Seam:
    """The under sleeve, and on it the top one: eased in where it is longer, stretched on where shorter."""
    ease = pair[0].path.length - pair[1].path.length
    gives: Gives = "longer" if ease >= 0.0 else "shorter"
    under, top = (
        EdgeUse(part_name(piece.name, f"{word}_seam"), part_name(piece.name, f"{word}_top"))
        for piece in (panels.under, panels.top)
    )
    between = ("upper_elbow_notch", "lower_elbow_notch")
    return Seam(
        part_name(slug, f"{word}_seam"), (under,), (top,), ease, "side", ease_between=between, gives=gives
    )


def _elbow_notches(seam: Seam, pair: tuple[SeamLine, SeamLine], kind: NotchKind) -> Iterator[Notch]:
    """Where the seams begin and cease to differ: as far from the ends of the seam on both pieces."""
    below = pair[0].straight_below
    for use, line in zip((seam.second[0], seam.first[0]), pair, strict=True):
        for word, distance in (
            ("upper_elbow_notch", line.straight_above),
            ("lower_elbow_notch", line.path.length - below),
        ):
            place = Place(use.edge, use.starts_at, distance)
            yield Notch(part_name(use.edge, word), place, kind, seam.name, "elbow")
