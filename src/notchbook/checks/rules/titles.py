"""Can each piece be told from the others by its title?"""

from collections.abc import Iterator

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken, title_of


@check(
    id="titles",
    title="Each piece has a title of its own",
    rationale=(
        "A cut panel lies on the bench with nothing but its label. Without a title nobody knows what it "
        "is, and two pieces of one title are mixed up in the bundle. Left and right are told apart by "
        "their side, which is written with the title."
    ),
    severity=Severity.STOP,
    reads=("pieces",),
    messages={
        "title-missing": "{piece} has no title.",
        "title-twice": "{piece} and {other} have the same title.",
    },
    suggestion="Give the piece a title that says what it is.",
)
def titles(subject: Subject) -> Iterator[Finding]:
    """Pieces without a title, or with the title of another."""
    seen: dict[str, str] = {}
    for piece in subject.pattern.pieces.values():
        if not piece.title.strip():
            yield titles.finding("title-missing", Spot(piece.name), piece=spoken(piece.name))
            continue
        title = title_of(piece).casefold()
        if title in seen:
            yield titles.finding(
                "title-twice",
                Spot(piece.name, None, None, (seen[title],)),
                piece=spoken(piece.name),
                other=spoken(seen[title]),
            )
        seen.setdefault(title, piece.name)
