"""The help page of a code: of a refusal, of a check, or of what a check found."""

from dataclasses import dataclass

from notchbook.errors import InputError, catalogue, with_facts_named
from notchbook.units import quoted, suggestion


@dataclass(frozen=True, slots=True)
class Explanation:
    """What a code stands for, why it matters, and what to do; ``‹bust›`` stands for a fact of a case."""

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
        return _page(wanted, entry.message, entry.why, entry.next_step)
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
            pages[code] = _page(code, words, check.rationale, check.suggestion)
        pages[check.id] = _page(check.id, f"{check.title}.", check.rationale, check.suggestion)
    return pages


def _page(code: str, title: str, why: str, next_step: str) -> Explanation:
    return Explanation(code, with_facts_named(title), why, with_facts_named(next_step))
