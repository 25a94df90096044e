"""What the book holds: styles, bodies and size charts, by number."""

from notchbook.app.studio import EntrySummary, ShelfKind, Studio
from notchbook.workroom.answers.form import Answer


class Entry(Answer):
    """One line of the library."""

    id: int
    number: str
    name: str
    version: int
    status: str
    kind: ShelfKind


class Shelf(Answer):
    """All styles, all that has measures (bodies, forms, sizes: see their ``kind``), and size charts.

    ``notice`` is what she should know about where the book lies.
    """

    styles: tuple[Entry, ...]
    bodies: tuple[Entry, ...]
    charts: tuple[Entry, ...]
    notice: str | None


def entry(summary: EntrySummary) -> Entry:
    """The line of one entry."""
    return Entry(
        id=summary.id,
        number=summary.number,
        name=summary.name,
        version=summary.version,
        status=summary.status,
        kind=summary.kind,
    )


def shelf(studio: Studio) -> Shelf:
    """What the book holds now."""
    return Shelf(
        styles=tuple(map(entry, studio.list_styles())),
        bodies=tuple(map(entry, studio.list_bodies())),
        charts=tuple(map(entry, studio.list_charts())),
        notice=studio.notice(),
    )
