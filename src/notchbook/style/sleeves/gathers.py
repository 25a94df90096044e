"""What a spread sleeve is drawn in by: its cap between the notches, its hem to a cuff or an elastic."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.pattern import Pattern, part_name, sewn_length, spoken
from notchbook.style.fullness.take_up import Stretch, taken_up
from notchbook.style.sleeves.found import EASE, HALVES, notch_from_top
from notchbook.style.sleeves.opened import OpenedSleeve
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Gathered:
    """The pattern with an edge gathered; what a step declares of it; the edge as cut and as sewn, mm."""

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]]
    removals: Mapping[str, str]
    asked: Mapping[str, float]
    cut: float
    sewn: float


def gathered_cap(before: Pattern, slug: str, opened: OpenedSleeve) -> Gathered:
    """The cap gathered between its balance notches to the length of the armhole there.

    The ease that it had is gathered with it: the notches that held it go.
    """
    sleeve, after = opened.before, opened.pattern
    gone: dict[str, str] = {}
    splits: dict[str, tuple[str, ...]] = {}
    asked: dict[str, float] = {}
    cut = sewn = 0.0
    for which in HALVES:
        cap, seam = sleeve.name(f"cap_{which}"), after.seams[part_name(sleeve.slug, f"{which}_armhole")]
        reach = notch_from_top(before, sleeve.piece.name, which)
        known = frozenset(after.intakes)
        stretch = Stretch(cap, sleeve.name("cap_top"), 0.0, reach, "gather")
        taken = taken_up(before, after, slug, stretch)
        splits.update(taken.splits)
        marks = [name for name in taken.pattern.notches if name not in after.notches]
        after = taken.pattern.with_notches(without=marks)  # the balance notches stand there already
        after, edge, amount = _with_ease(after, known, seam.ease)
        cut, sewn = cut + after.edges[edge].length, sewn + after.edges[edge].length - amount
        if seam.ease:
            asked[edge] = -seam.ease
            after = after.with_seams(replace(seam, ease=0.0, ease_between=None))
            ease_notches = _ease_notches(after, seam.name)
            gone.update(dict.fromkeys(ease_notches, "the ease is gathered in with the cap"))
            after = after.with_notches(without=ease_notches)
    return Gathered(after, splits, gone, asked, cut, sewn)


def _with_ease(pattern: Pattern, known: frozenset[str], ease: float) -> tuple[Pattern, str, float]:
    """The new gather of half a cap with the ease of its seam taken in; the edge that it draws in, and how
    much."""
    intake = next(one for one in pattern.intakes.values() if one.name not in known)
    piece = pattern.pieces[pattern.carriers[intake.name]]
    eased = replace(intake, amount=intake.amount + ease)
    return pattern.with_pieces(piece.with_intake(eased)), intake.edge, eased.amount


def _ease_notches(pattern: Pattern, seam: str) -> list[str]:
    ends = (f"/{EASE}", f"/{EASE}@left", f"/{EASE}@right")
    return [n.name for n in pattern.notches.values() if n.serves(seam) and n.name.endswith(ends)]


def gathered_hem(before: Pattern, slug: str, opened: OpenedSleeve, to: float) -> Gathered:
    """The hem gathered from end to end to the length ``to``, mm.

    StepRefused ``sleeve-hem-too-small`` where the hem as cut is shorter.
    """
    sleeve, after = opened.before, opened.pattern
    hem = sleeve.name("hem")
    whole = sewn_length(before, hem)
    cut = sewn_length(after, hem)
    if to > cut - TOLERANCES.closure:
        raise StepRefused("sleeve-hem-too-small", hem=spoken(hem), length=cut, wanted=to)
    known = frozenset(after.intakes)
    taken = taken_up(before, after, slug, Stretch(hem, sleeve.name("hem_back"), 0.0, whole, "gather"))
    after, edge, amount = _with_ease(taken.pattern, known, whole - to)
    return Gathered(after, taken.splits, {}, {edge: to - whole}, cut, after.edges[edge].length - amount)
