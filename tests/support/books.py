"""What tests of the book share: a clock that ticks, invented entries, another schema, lost edits."""

import shutil
from collections.abc import Callable, Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import notchbook.book
from notchbook.book import Book, Clock, Document, Frozen, Settings, looking, migrating
from notchbook.book import book as door
from notchbook.book.connecting import Journal
from notchbook.book.models import SCHEMA
from notchbook.errors import BookError

SetAttribute = Callable[[object, str, object], None]
"""``setattr``, or that of a monkeypatch, which is taken back."""

MIGRATIONS = Path(notchbook.book.__file__).parent / "migrations"

NEXT = SCHEMA + 1
"""The schema that only tests know."""

NEXT_SCHEMA = '''
"""A schema that only tests know: a new column, and the revisions table copied."""

import sqlalchemy as sa
from alembic import op

revision = "{next}"
down_revision = "{now}"


def upgrade() -> None:
    with op.batch_alter_table("revisions", recreate="always") as table:
        table.add_column(sa.Column("planted", sa.Integer(), nullable=True))
    {and_then}
'''


def ticking_clock(start: datetime = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)) -> Clock:
    """A clock that is one second later each time it is asked."""
    seconds = iter(range(10**9))
    return lambda: start + timedelta(seconds=next(seconds))


def settings(busy_timeout_s: float = 5.0, page_limit: int | None = None) -> Settings:
    """Settings with the ticking clock and an invented actor."""
    return Settings("Ines", ticking_clock(), busy_timeout_s, page_limit)


def add_style(book: Book, number: str = "S-104", name: str = "Gored skirt", content: str = "[0]") -> Document:
    """An invented style."""
    return book.add("style", number, name, content, note="from a sketch")


def frozen(*blocks: str, geometry: str = '{"outline":[0,0,250,600]}') -> Frozen:
    """Invented parts of a revision."""
    return Frozen('{"waist":720}', geometry, {"draft-skirt": 1}, blocks)


def files_in(folder: Path) -> dict[str, bytes]:
    """Every file of a folder with its bytes."""
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir()) if path.is_file()}


def plant_schema(set_attribute: SetAttribute, folder: Path, and_then: str = "pass") -> None:
    """Make this program one schema newer; ``and_then`` is a last line of the planted migration."""
    scripts = folder / "migrations"
    if not scripts.exists():
        shutil.copytree(MIGRATIONS, scripts, ignore=shutil.ignore_patterns("__pycache__"))
        text = NEXT_SCHEMA.replace("{and_then}", and_then)
        text = text.replace("{next}", f"{NEXT:04d}").replace("{now}", f"{SCHEMA:04d}")
        (scripts / "versions" / f"schema_{NEXT:04d}_planted.py").write_text(text, encoding="utf-8")
    for module in (door, looking, migrating):
        set_attribute(module, "SCHEMA", NEXT)
    set_attribute(migrating, "SCRIPTS", str(scripts))


def use_rollback_journal(set_attribute: SetAttribute) -> None:
    """As if every folder were on a network."""
    set_attribute(looking, "journal_for", lambda _path: Journal.ROLLBACK)


def lost(book: Book, document_id: int, confirmed: Iterable[tuple[int, str]]) -> list[tuple[int, str]]:
    """The confirmed edits (version and hash of the content after it) that the book does not have."""
    present = {(event.version_after, event.content_hash) for event in book.history(document_id)}
    return [edit for edit in confirmed if edit not in present]


def write_with_patience(book: Book, document_id: int, who: str, edits: int) -> int:
    """Add words to the content, reading again after each conflict; the number of conflicts."""
    conflicts = done = 0
    while done < edits:
        seen = book.read(document_id)
        try:
            book.save(document_id, f"{seen.content}{who}{done} ", seen.version, "move-dart", actor=who)
            done += 1
        except BookError as error:
            if error.code != "book-conflict" or not error.facts["events"]:
                raise
            conflicts += 1
    return conflicts


def write_in_a_process(path: Path, document_id: int, who: str, edits: int) -> int:
    """The same, with a book of its own; here, so that another process can import it."""
    with Book.open(path, settings(busy_timeout_s=30)) as book:
        return write_with_patience(book, document_id, who, edits)
