"""What the checks say, as pencil marks: where, how grave, in words, and what is proven."""

from notchbook.app.curing import offered_cures
from notchbook.app.finding_words import amounts_in, message_in, suggestion_in
from notchbook.app.offered_cure import OfferedCure
from notchbook.app.step_cures import step_cures
from notchbook.app.wishes.finding_wishes import wish_at
from notchbook.checks import Report, check_sources, load_check
from notchbook.pattern import Finding, Severity, spoken
from notchbook.recipe import Replay
from notchbook.recipe.targets import numbers_of, said_quantity
from notchbook.workroom.answers.cures import Contradiction, Cure, contradiction, cure
from notchbook.workroom.answers.form import Answer, At
from notchbook.workroom.answers.lines import at
from notchbook.workroom.reader import Reader


class NoteWish(Answer):
    """What could be made to measure so that a finding is gone, as a wish takes it; ``words`` offer it."""

    words: str
    text: str
    said: str
    now_text: str
    wanted_text: str


class FindingNote(Answer):
    """One finding; ``place`` lies in the frame of ``piece``. ``why`` is the patternmaker's reason.

    ``cures`` would heal it, and so would a number that makes the ``wish`` come true; ``contradiction`` are
    the two measures that disagree. Both are None where there are none.
    """

    code: str
    severity: Severity
    message: str
    numbers: str
    suggestion: str
    why: str
    piece: str | None
    where: str | None
    place: At | None
    cures: tuple[Cure, ...] = ()
    contradiction: Contradiction | None = None
    wish: NoteWish | None = None


class Proven(Answer):
    """How many checks had nothing to say, how many seams were walked and the worst of them."""

    checks: int
    seams: int
    worst: str
    skipped: int
    broken: tuple[str, ...]


class Findings(Answer):
    """All that is to check, the gravest first, and the quiet line of what is proven.

    ``papers`` says whether the cut pieces, of which the papers are made, were looked at too.
    """

    notes: tuple[FindingNote, ...]
    proven: Proven
    papers: bool


def findings(report: Report, reader: Reader, run: Replay, *, papers: bool) -> Findings:
    """The report on a run in the reader's unit.

    Steps that cure are tried with the papers only, when she pauses: each is a run on a copy.
    """
    worst = report.worst_seam
    offered = offered_cures(run) if any(finding.cures for finding in report.findings) else ()
    if papers:
        offered = (*offered, *step_cures(run, report))
    return Findings(
        papers=papers,
        notes=tuple(_note(finding, reader, run, offered) for finding in report.findings),
        proven=Proven(
            checks=len(report.passed),
            seams=0 if worst is None else worst.walked,
            worst="" if worst is None else f"{spoken(worst.seam)} {reader.fine(abs(worst.misfit))}",
            skipped=len(report.skipped),
            broken=tuple(broken.id for broken in report.broken),
        ),
    )


def _note(finding: Finding, reader: Reader, run: Replay, offered: tuple[OfferedCure, ...]) -> FindingNote:
    told = finding.contradiction
    return FindingNote(
        code=finding.code,
        severity=finding.severity,
        message=message_in(finding, reader.style),
        numbers=amounts_in(finding, reader.style),
        suggestion=suggestion_in(finding, reader.style),
        why=_why(finding),
        piece=finding.piece,
        where=finding.where,
        place=None if finding.position is None else at(finding.position),
        cures=tuple(cure(one, reader) for one in offered if _heals(one, finding)),
        contradiction=None if told is None else contradiction(told, run.measures, reader),
        wish=_wish(finding, reader, run),
    )


def _wish(finding: Finding, reader: Reader, run: Replay) -> NoteWish | None:
    """The wish in the reader's unit; none while no number of the recipe can move."""
    wish = wish_at(finding, run)
    if wish is None or next(iter(numbers_of(run.recipe)), None) is None:
        return None
    wanted = reader.fine(wish.wanted)
    return NoteWish(
        words="make it agree by a number" if wish.quantity.kind == "misfit" else f"make it measure {wanted}",
        text=wish.quantity.text,
        said=said_quantity(wish.quantity),
        now_text=reader.fine(wish.now),
        wanted_text=wanted,
    )


def _heals(offered: OfferedCure, finding: Finding) -> bool:
    """Whether this is the finding that the cure was offered for."""
    if offered.adds is not None:
        return (offered.code, offered.where) == (finding.code, finding.where)
    return bool(finding.cures) and offered.code == finding.code


def _why(finding: Finding) -> str:
    """The reason of the check; a note of a draft comes from no check."""
    return load_check(finding.check).rationale if finding.check in check_sources() else ""
