"""What the book holds: the styles and the bodies, by number."""

from notchbook.app.studio import EntrySummary, Studio
from notchbook.workroom.answers.form import Answer


class Entry(Answer):
    """One line of the library."""

    id: int
    number: str
    name: str
    version: int
    status: str


class Shelf(Answer):
    """All styles and bodies; ``notice`` is what she should know about where the book lies."""

    styles: tuple[Entry, ...]
    bodies: tuple[Entry, ...]
    notice: str | None


def entry(summary: EntrySummary) -> Entry:
    """The line of one entry."""
    return Entry(
        id=summary.id,
        number=summary.number,
        name=summary.name,
        version=summary.version,
        status=summary.status,
    )


def shelf(studio: Studio) -> Shelf:
    """What the book holds now."""
    return Shelf(
        styles=tuple(map(entry, studio.list_styles())),
        bodies=tuple(map(entry, studio.list_bodies())),
        notice=studio.notice(),
    )
