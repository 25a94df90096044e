"""The help page of a code: of a refusal, of a check, or of what a check found."""

from dataclasses import dataclass

from notchbook.errors import InputError, as_read, catalogue
from notchbook.units import quoted, suggestion


@dataclass(frozen=True, slots=True)
class Explanation:
    """What a code stands for, why it matters, and what to do; ``…`` stands for the facts of a case."""

    code: str
    title: str
    why: str
    next_step: str


def explain(code: str) -> Explanation:
    """The page of a code; InputError ``message-unknown`` with the nearest one."""
    wanted = code.strip().strip("[]").lower()
    messages = catalogue()
    if wanted in messages:
        entry = messages[wanted]
        return Explanation(wanted, as_read(entry.message), entry.why, as_read(entry.next_step))
    checks = _check_pages()
    if wanted in checks:
        return checks[wanted]
    raise InputError(
        "message-unknown", word=quoted(code), suggestion=suggestion(wanted, (*messages, *checks))
    )


def _check_pages() -> dict[str, Explanation]:
    """Pages of the checks by their ids and by the codes of their findings."""
    from notchbook.checks import all_checks

    pages = {}
    for check in all_checks():
        for code, words in check.messages.items():
            pages[code] = Explanation(code, words, check.rationale, check.suggestion)
        pages[check.id] = Explanation(check.id, f"{check.title}.", check.rationale, check.suggestion)
    return pages
