"""Looking a pattern over: the checks, and what the draft had to say."""

from dataclasses import replace

from notchbook.app.resting_on_estimates import rested_on
from notchbook.app.target_findings import target_findings
from notchbook.checks import Report, Subject, all_checks, run_checks
from notchbook.finish import Cloth, HouseTable
from notchbook.recipe import Replay


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
        is_block=not _was_styled(replay),
        estimates={name: one.measure for name, one in rested.items()},
        stale={name: one.now for name, one in rested.items() if one.is_stale},
        population=measures.population,
    )


def examine_subject(subject: Subject, replay: Replay, *, cut: bool = True) -> Report:
    """As :func:`examine`, on a subject whose cut pieces are wanted afterward."""
    report = run_checks(subject, None if cut else _without_cut())
    return replace(report, findings=(*replay.notes, *target_findings(replay), *report.findings))


def _without_cut() -> list[str]:
    return [check.id for check in all_checks() if "cut" not in check.reads]


def _was_styled(replay: Replay) -> bool:
    """Whether shapes were changed after the drafts, so that only what is kept can be asked of them."""
    from notchbook.recipe import definition

    left = () if replay.left is None else replay.left.states  # a step may be for the left alone
    return any(
        definition(state.record.operation).kind == "style" and state.record.phase == "shaping"
        for state in (*replay.states, *left)
    )
