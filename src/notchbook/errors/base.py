"""The base class of every refusal, and its few children."""

from notchbook.errors.catalogue import LengthText, entry, fill, length_in_mm


class NotchbookError(Exception):
    """A refusal in words that a patternmaker understands.

    ``code`` is stable and names a message of the catalogue; ``facts`` fill its words (lengths in
    mm). Raise a child with the code and the facts: ``raise InputError("measure-missing", keys=...)``.
    """

    def __init__(self, code: str, **facts: object) -> None:
        self.code = code
        self.facts = facts
        super().__init__(code)

    def text(self, length_text: LengthText = length_in_mm) -> str:
        """What is wrong, lengths written by ``length_text``."""
        return fill(entry(self.code).message, self.facts, length_text)

    def next_step(self, length_text: LengthText = length_in_mm) -> str:
        """What to do now."""
        return fill(entry(self.code).next_step, self.facts, length_text)

    def __str__(self) -> str:
        return f"{self.text()} {self.next_step()} [{self.code}]"

    def __reduce__(self) -> tuple[object, ...]:
        return (_rebuild, (type(self), self.code, self.facts))


def _rebuild(kind: type[NotchbookError], code: str, facts: dict[str, object]) -> NotchbookError:
    return kind(code, **facts)


class InputError(NotchbookError, ValueError):
    """What was given cannot be used: a measure, a number, a file."""


class GeometryError(NotchbookError, ValueError):
    """A line or curve that cannot be made as asked."""


class NameLost(NotchbookError, LookupError):
    """A name that is lost or fits more than one thing."""


class StepRefused(NotchbookError):
    """A pattern step that cannot be done on this pattern, with the reason."""


class DraftRefused(StepRefused):
    """A block that cannot be drafted from these measures, with the pair that disagrees."""


class OutputError(NotchbookError, OSError):
    """A file that cannot be written or read."""


class BookError(NotchbookError):
    """The book cannot do this: a conflict, a missing entry, a damaged or newer file."""


class HouseFault(NotchbookError, AssertionError):
    """Our own bug: something that the house promises did not hold. Never the user's fault."""
