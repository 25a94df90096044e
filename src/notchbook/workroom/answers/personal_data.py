"""What holds a client's data, and what came of a code or an erasure, as the page shows it."""

from collections.abc import Iterable

from notchbook.app.personal_data import Copy
from notchbook.app.personal_data.codes import CodeReport
from notchbook.app.personal_data.erasures import ErasurePlan, ErasureReport, FrozenLine
from notchbook.app.personal_data.mentions import Mention as AppMention
from notchbook.workroom.answers.form import Answer


class Mention(Answer):
    """Her name in a text of another entry; ``where`` in words, ``after`` what the text becomes.

    ``changes`` False: it is never changed, as the name of another client is not.
    """

    number: str
    where: str
    text: str
    after: str
    changes: bool


class BookCopy(Answer):
    """A file beside the book that holds her, or that could not be looked into (``readable`` false)."""

    name: str
    readable: bool


class FrozenRevision(Answer):
    """A revision that was frozen on her measures."""

    number: str
    revision: int
    reason: str
    approved: bool


class StyleForHer(Answer):
    """A style that is drafted for her now."""

    id: int
    number: str
    name: str


class PersonalData(Answer):
    """All that holds her data. ``free_code`` is offered; ``not_reached`` says what no erasure reaches."""

    id: int
    number: str
    name: str
    version: int
    free_code: str
    journal_lines: int
    styles: tuple[StyleForHer, ...]
    revisions: tuple[FrozenRevision, ...]
    mentions: tuple[Mention, ...]
    copies: tuple[BookCopy, ...]
    not_reached: tuple[str, ...]


class UnderCode(Answer):
    """Her code, what was changed for it, and where the old name still stands.

    ``clean`` false: cleaned at the next opening.
    """

    code: str
    changed: tuple[Mention, ...]
    mentions: tuple[Mention, ...]
    copies: tuple[BookCopy, ...]
    clean: bool


class ErasedClient(Answer):
    """The numbers that are gone, and what of her is left; ``whole`` when nothing is that could be reached."""

    erased: tuple[str, ...]
    changed: tuple[Mention, ...]
    kept: tuple[FrozenRevision, ...]
    mentions: tuple[Mention, ...]
    copies: tuple[BookCopy, ...]
    clean: bool
    whole: bool


def personal_data(plan: ErasurePlan, free_code: str) -> PersonalData:
    """The plan of an erasure, which tells what holds her data."""
    return PersonalData(
        id=plan.id,
        number=plan.number,
        name=plan.name,
        version=plan.version,
        free_code=free_code,
        journal_lines=plan.journal_lines,
        styles=tuple(StyleForHer(id=one.id, number=one.number, name=one.name) for one in plan.styles),
        revisions=_frozen((*plan.own_revisions, *plan.frozen)),
        mentions=_mentions(plan.mentions),
        copies=_copies(plan.copies),
        not_reached=plan.beyond,
    )


def under_code(report: CodeReport) -> UnderCode:
    """What came of a code."""
    return UnderCode(
        code=report.code,
        changed=_mentions(report.changed),
        mentions=_mentions(report.mentions),
        copies=_copies(report.copies),
        clean=report.clean,
    )


def erased_client(report: ErasureReport) -> ErasedClient:
    """What came of an erasure."""
    return ErasedClient(
        erased=report.erased,
        changed=_mentions(report.changed),
        kept=_frozen(report.kept),
        mentions=_mentions(report.mentions),
        copies=_copies(report.copies),
        clean=report.clean,
        whole=report.whole,
    )


def _mentions(found: Iterable[AppMention]) -> tuple[Mention, ...]:
    return tuple(
        Mention(number=one.number, where=one.where, text=one.text, after=one.after, changes=one.changes)
        for one in found
    )


def _copies(found: Iterable[Copy]) -> tuple[BookCopy, ...]:
    return tuple(BookCopy(name=copy.path.name, readable=copy.readable) for copy in found)


def _frozen(found: Iterable[FrozenLine]) -> tuple[FrozenRevision, ...]:
    return tuple(
        FrozenRevision(number=one.number, revision=one.revision, reason=one.reason, approved=one.approved)
        for one in found
    )
