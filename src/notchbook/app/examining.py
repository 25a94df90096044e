"""Looking a pattern over: the checks, and what the draft had to say."""

from collections.abc import Collection
from dataclasses import replace
from typing import Final

from notchbook.app.bodies.resting_on_estimates import rested_on
from notchbook.app.folded_notes import folded
from notchbook.app.wishes.target_findings import target_findings
from notchbook.checks import Report, Subject, all_checks, run_checks
from notchbook.errors import NotchbookError
from notchbook.finish import Cloth, HouseTable
from notchbook.pattern import Finding, Pattern, seam_misfit, split_side
from notchbook.pattern.promise_parts import LEFT_AWAY
from notchbook.pattern.resolve import expand, fate_of
from notchbook.recipe import Phase, Replay
from notchbook.recipe.definition import PHASES
from notchbook.units import TOLERANCES

_SHAPING: Final[tuple[Phase, ...]] = ("shaping",)

DART_WIDE = "dart-wide"
"""What a draft says of a dart that takes up too much; a yoke or a panel seam may have taken it in."""

_ELASTIC: Final = frozenset({"edge-elastic", "leg-elastic"})
"""What a draft says of the elastic on an edge."""

SEAM_PUT_OUT = "seam-put-out"
"""What a step says when it put a seam out of true; a later step may have trued it, or declared the ease."""


def examine(replay: Replay, house: HouseTable | None = None, *, cut: bool = True) -> Report:
    """The report of all checks on the last good pattern; notes of the drafts and wishes that no longer come
    true are among its findings.

    Without ``cut`` the checks that need the pieces made cut-ready are left for later: while a
    pattern is being shaped, every stroke is looked at, the papers when she pauses.
    """
    return examine_subject(subject_of(replay, house), replay, cut=cut)


def subject_of(replay: Replay, house: HouseTable | None = None, cloth: Cloth | None = None) -> Subject:
    """What the checks look at: the last good pattern, the body, and what the drafts promised.

    What a draft promised is checked on the block as drafted, and after the styles where it must be kept.
    """
    measures, rested = replay.measures, rested_on(replay)
    return Subject(
        replay.pattern,
        {name: measure.value for name, measure in measures.values.items()},
        replay.expectations,
        house,
        cloth,
        is_block=not _has_style_step(replay, PHASES),
        is_shaped=_has_style_step(replay, _SHAPING),
        estimates={name: one.measure for name, one in rested.items()},
        stale={name: one.now for name, one in rested.items() if one.is_stale},
        population=measures.population,
        waves=replay.waves,
        grains=replay.grains,
    )


def examine_subject(subject: Subject, replay: Replay, *, cut: bool = True) -> Report:
    """As :func:`examine`, on a subject whose cut pieces are wanted afterward."""
    report = run_checks(subject, None if cut else _without_cut())
    notes = tuple(
        note
        for note in replay.notes
        if not _was_trued_since(note, subject.pattern)
        and not _is_closed_since(note, subject.pattern)
        and not _is_left_away_since(note, subject.pattern)
        and not _has_lost_its_elastic(note, subject.pattern)
    )
    return replace(report, findings=folded((*notes, *target_findings(replay), *report.findings)))


def _was_trued_since(note: Finding, pattern: Pattern) -> bool:
    """Whether a seam that a step put out walks true on the finished pattern."""
    seam = pattern.seams.get(note.names[0]) if note.code == SEAM_PUT_OUT and note.names else None
    if seam is None:
        return False
    try:
        return abs(seam_misfit(pattern, seam)) <= TOLERANCES.seam_walk
    except NotchbookError:
        return False


def _is_closed_since(note: Finding, pattern: Pattern) -> bool:
    """Whether a dart that was drafted too wide is no longer there: a seam took it in."""
    left = {split_side(name)[0] for name in pattern.intakes}
    return note.code == DART_WIDE and note.where is not None and split_side(note.where)[0] not in left


def _is_left_away_since(note: Finding, pattern: Pattern) -> bool:
    """Whether the line that a draft spoke of lay on a piece that is not cut."""
    if note.where is None:
        return False
    living, lost = expand(pattern, note.where)
    fates = [fate_of(pattern, name) for name in lost]
    return not living and all(fate is not None and fate.reason == LEFT_AWAY for fate in fates)


def _has_lost_its_elastic(note: Finding, pattern: Pattern) -> bool:
    """Whether a draft spoke of an elastic on an edge that has none any more: a band is sewn there now."""
    if note.code not in _ELASTIC or note.where is None:
        return False
    drawn_in = (name for elastic in pattern.elastics.values() for name in elastic.edges)
    edges = {split_side(edge)[0] for name in drawn_in for edge in (name, *expand(pattern, name)[0])}
    return not edges & {split_side(edge)[0] for edge in (note.where, *expand(pattern, note.where)[0])}


def _without_cut() -> list[str]:
    return [check.id for check in all_checks() if "cut" not in check.reads]


def _has_style_step(replay: Replay, phases: Collection[Phase]) -> bool:
    """Whether more than drafts ran, in one of these phases."""
    from notchbook.recipe import definition

    left = () if replay.left is None else replay.left.states  # a step may be for the left alone
    return any(
        definition(state.record.operation).kind == "style" and state.record.phase in phases
        for state in (*replay.states, *left)
    )
