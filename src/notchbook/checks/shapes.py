"""The shapes of armholes, necks, caps and crotches as closures: what the shape checks look at, measured."""

from collections.abc import Iterator

from notchbook.checks.armholes import armholes, wrong_turns
from notchbook.checks.bow import bow, rounded
from notchbook.checks.caps import caps, laid_caps, lay_gap, lay_length, most_lay
from notchbook.checks.closure import Closure
from notchbook.checks.crotches import corner_range, crotches
from notchbook.checks.necks import lowered_by, necks, rise_and_width
from notchbook.checks.subject import Subject


def shape_closures(subject: Subject) -> Iterator[Closure]:
    """The shapes of a subject. A range is given by its middle and half its width."""
    yield from _armholes(subject)
    yield from _necks(subject)
    yield from _caps(subject)
    yield from _laid(subject)
    yield from _crotches(subject)


def _armholes(subject: Subject) -> Iterator[Closure]:
    limits = subject.limits
    for run in armholes(subject.pattern):
        where = (run.name,)
        turned = sum(turn.turned for turn in wrong_turns(subject, run))
        yield Closure(f"{run.name}: bends outward", "shape", where, turned, 0.0, limits.inflection, "deg")
        shape = bow(run)
        if run.panel == "front" and shape.chord:
            half = limits.hollow_height / 2.0
            name = f"{run.name}: height of its hollow"
            yield Closure(name, "shape", where, shape.into_height, half, half, "")


def _necks(subject: Subject) -> Iterator[Closure]:
    limits = subject.limits
    for run in necks(subject.pattern):
        turned = sum(turn.turned for turn in rounded(run, limits.inflection) if turn.turned > 0.0)
        name = f"{run.name}: bends outward"
        yield Closure(name, "shape", (run.name,), turned, 0.0, limits.inflection, "deg")
        rise, width = rise_and_width(run)
        if run.panel == "back" and width:
            half = limits.back_neck_rise / 2.0
            own_rise = max(rise - lowered_by(run), 0.0)
            name = f"{run.name}: rise to width"
            yield Closure(name, "shape", (run.name,), own_rise / width, half, half, "")


def _caps(subject: Subject) -> Iterator[Closure]:
    for run in caps(subject.pattern):
        changes = max(len(rounded(run, subject.limits.inflection)) - 1, 0)
        yield Closure(f"{run.name}: changes of bend", "shape", (run.name,), float(changes), 1.0, 0.0, "")


def _laid(subject: Subject) -> Iterator[Closure]:
    limits = subject.limits
    for laid in laid_caps(subject.pattern):
        most = most_lay(subject, laid)
        where = (laid.cap.name, laid.armhole.name)
        gap = lay_gap(laid, lay_length(laid, limits))
        yield Closure(f"{laid.cap.name}: laid on the armhole", "shape", where, gap, 0.0, most)


def _crotches(subject: Subject) -> Iterator[Closure]:
    for crotch in crotches(subject.pattern):
        if crotch.run.piece.stretches:
            continue
        least, most = corner_range(crotch, subject.limits)
        middle, half = (least + most) / 2.0, (most - least) / 2.0
        name = f"{crotch.run.name}: corner depth"
        yield Closure(name, "shape", (crotch.run.name,), crotch.corner_depth, middle, half)
