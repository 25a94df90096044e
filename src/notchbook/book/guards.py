"""Triggers that keep what may never change, whoever writes to the file.

They are no part of a migration: a migration that copies a table loses its triggers, so all of them are
taken off before migrations run and put back after. An erasure, and giving a name up for a code, take them
off too, within their transaction (docs/decisions/0009-erasure.md). ``INSERT OR REPLACE`` removes rows
without telling a trigger on removal, so inserts over an existing row are guarded too.
"""

from typing import Final

from sqlalchemy import Connection

_FROZEN_COLUMNS: Final = (
    "id",
    "document_id",
    "revision",
    "hash",
    "document_version",
    "reason",
    "frozen_by",
    "frozen_at",
    "content_hash",
    "measures_hash",
    "geometry_hash",
    "step_versions",
)
_FROZEN_CHANGED: Final = " OR ".join(f"NEW.{name} IS NOT OLD.{name}" for name in _FROZEN_COLUMNS)
_APPROVED: Final = "(SELECT approved_at FROM revisions WHERE id = NEW.revision_id) IS NOT NULL"


def _guard(name: str, moment: str, condition: str, words: str) -> str:
    when = f"WHEN {condition} " if condition else ""
    return f"CREATE TRIGGER {name} BEFORE {moment} {when}BEGIN SELECT RAISE(ABORT, '{words}'); END"


def _exists(table: str, *same: str) -> str:
    return f"EXISTS (SELECT 1 FROM {table} AS old WHERE {' OR '.join(same)})"


def _never(table: str, what: str, *same: str) -> dict[str, str]:
    """Guards for a table whose rows are only ever added."""
    names = {moment: f"guard_{table}_{moment}" for moment in ("insert", "update", "delete")}
    return {
        names["insert"]: _guard(
            names["insert"], f"INSERT ON {table}", _exists(table, *same), f"{what} is never replaced"
        ),
        names["update"]: _guard(names["update"], f"UPDATE ON {table}", "", f"{what} is never changed"),
        names["delete"]: _guard(names["delete"], f"DELETE ON {table}", "", f"{what} is never removed"),
    }


def _single(name: str, moment: str, condition: str, words: str) -> dict[str, str]:
    return {name: _guard(name, moment, condition, words)}


GUARDS: Final[dict[str, str]] = {
    **_never("contents", "a stored text", "old.hash = NEW.hash"),
    **_never(
        "events",
        "a line of the journal",
        "old.id = NEW.id",
        "(old.document_id = NEW.document_id AND old.version_after = NEW.version_after)",
    ),
    **_never(
        "revision_blocks",
        "a block of a revision",
        "(old.revision_id = NEW.revision_id AND old.block_hash = NEW.block_hash)",
    ),
    **_single(
        "guard_revision_blocks_approved",
        "INSERT ON revision_blocks",
        _APPROVED,
        "an approved revision is never changed",
    ),
    **_single(
        "guard_revisions_insert",
        "INSERT ON revisions",
        _exists(
            "revisions",
            "old.id = NEW.id",
            "(old.document_id = NEW.document_id AND (old.revision = NEW.revision OR old.hash = NEW.hash))",
        ),
        "a revision is never replaced",
    ),
    **_single(
        "guard_revisions_update",
        "UPDATE ON revisions",
        f"OLD.approved_at IS NOT NULL OR {_FROZEN_CHANGED}",
        "a revision is never changed",
    ),
    **_single("guard_revisions_delete", "DELETE ON revisions", "", "a revision is never removed"),
    **_single("guard_documents_delete", "DELETE ON documents", "", "a document is never removed"),
    **_single(
        "guard_documents_version",
        "UPDATE ON documents",
        "NEW.version IS NOT OLD.version + 1 OR NEW.entry_id IS NOT OLD.entry_id OR NEW.id IS NOT OLD.id",
        "a document changes by one version at a time",
    ),
    **_single(
        "guard_documents_insert",
        "INSERT ON documents",
        _exists("documents", "old.id = NEW.id", "old.entry_id = NEW.entry_id"),
        "a document is never replaced",
    ),
    **_single("guard_entries_delete", "DELETE ON entries", "", "an entry is never removed"),
    **_single(
        "guard_entries_insert",
        "INSERT ON entries",
        _exists("entries", "old.id = NEW.id", "(old.series = NEW.series AND old.serial = NEW.serial)"),
        "an entry is never replaced",
    ),
    **_never(
        "erasures", "an erasure", "old.id = NEW.id", "(old.series = NEW.series AND old.serial = NEW.serial)"
    ),
}
"""Name of each trigger and the statement that makes it. A change here needs a new ``SCHEMA``."""


def take_off_guards(connection: Connection) -> None:
    """Remove the triggers, before a migration or an erasure runs in the same transaction."""
    rows = connection.exec_driver_sql("SELECT name FROM sqlite_master WHERE type = 'trigger'")
    for name in [str(row[0]) for row in rows if str(row[0]).startswith("guard_")]:
        connection.exec_driver_sql(f"DROP TRIGGER {name}")


def put_on_guards(connection: Connection) -> None:
    """Put the triggers on all tables."""
    for statement in GUARDS.values():
        connection.exec_driver_sql(statement)
