"""Planted faults: for every check, patterns that it must find fault with, and harmless ones near by.

Each fault names the code that must be found. The measured amount is what was planted, worked out by
hand beside it, where it can be.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from notchbook.checks import Subject
from notchbook.finish import CutPiece
from notchbook.pattern import Pattern
from support.hand_skirt import hand_skirt

Made = Pattern | Subject


@dataclass(frozen=True)
class Planted:
    """A subject for one check; ``code`` is what must be found (None: nothing but notes may be)."""

    check: str
    code: str | None
    name: str
    make: Callable[[], Subject]
    measured: float | None = None
    within: float = 0.005

    def __str__(self) -> str:
        return f"{self.check}: {self.name}"


PLANTED: list[Planted] = []


def fault(
    check: str, code: str, measured: float | None = None, within: float = 0.005
) -> Callable[[Callable[[Pattern], Made]], Callable[[Pattern], Made]]:
    """Register a function that plants a fault in the hand-made skirt; ``measured`` is its amount."""

    def register(make: Callable[[Pattern], Made]) -> Callable[[Pattern], Made]:
        PLANTED.append(Planted(check, code, make.__name__, _subject(make), measured, within))
        return make

    return register


def harmless(check: str) -> Callable[[Callable[[Pattern], Made]], Callable[[Pattern], Made]]:
    """Register a function that changes the hand-made skirt so little that the check must stay silent."""

    def register(make: Callable[[Pattern], Made]) -> Callable[[Pattern], Made]:
        PLANTED.append(Planted(check, None, make.__name__, _subject(make)))
        return make

    return register


def _subject(make: Callable[[Pattern], Made]) -> Callable[[], Subject]:
    def made() -> Subject:
        result = make(hand_skirt())
        return result if isinstance(result, Subject) else Subject(result)

    return made


def with_cut_pieces(pattern: Pattern, change: Callable[[CutPiece], CutPiece]) -> Subject:
    """A subject whose cut pieces were changed after finishing, as a faulty finish would make them."""
    subject = Subject(pattern)
    subject.__dict__["cut_pieces"] = tuple(change(piece) for piece in subject.cut_pieces)
    return subject


def front_only(change: Callable[[CutPiece], CutPiece]) -> Callable[[CutPiece], CutPiece]:
    """The change, made to the front alone."""
    return lambda piece: change(piece) if piece.name == "skirt.front" else replace(piece)
