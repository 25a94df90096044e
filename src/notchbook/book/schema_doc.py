"""The page docs/formats/book.md, written from the tables themselves."""

from typing import Final

from sqlalchemy import CheckConstraint, Column, Table, UniqueConstraint

from notchbook.book.guards import GUARDS
from notchbook.book.models import APPLICATION_ID, SCHEMA, Base

_OPENING: Final = f"""\
# The file of a book

A book is one SQLite 3 file. Any SQLite program can read it; writing is left to Notchbook, which keeps the
rules of this page. This is schema {SCHEMA}.

- `PRAGMA application_id` is {APPLICATION_ID} ("NTCH"), `PRAGMA user_version` is the schema.
- Texts are UTF-8. Times are UTC, ISO 8601 with microseconds, always 27 characters, so that they sort.
- Recipes, measures and geometry are kept as the canonical JSON text that they were given as, each under the
  sha256 of its UTF-8 bytes. The book does not read them.
- On a disk of the computer the journal mode is WAL with `synchronous = FULL`; on any other file system it is
  the rollback journal with `synchronous = EXTRA`. While a book is open, files with the endings `-wal` and
  `-shm` (or `-journal`) may lie beside it and belong to it.
- A schema is upgraded in one transaction, after a copy `NAME-before-schema-N` was put beside the file.

## Versions, states, undo

Each event gives its document the next version. The *state* of a version is the version that first had its
content: its own for an edit, an earlier one after undo and redo. Undo goes from state n to `state_before` of
the event that made version n; redo goes forward on the way to the newest edit. Both are events; none is ever
taken out. So `documents` follows from `events` at any time.

## What leaves the book

The journal only grows and a frozen revision never changes, with one exception that the law of many countries
asks for: a client's data can be erased, and her name can give way to a code. Both are one transaction, in
which the guards below are taken off and put back. An erasure removes entries with their documents, journals,
revisions and texts, and leaves a row in `erasures`; a code changes texts in old versions and revisions too,
with the hashes that follow from them. Documents that stay and change get a line in their journal (`erase`,
`keep-under-code`). Then the file is built anew and its log emptied, so that free pages hold nothing old; a
row in `sweeps` asks for it until it is done. Ids and numbers of what was erased are not given again.

## The hash of a revision

It is the sha256 of this JSON object, with sorted keys, without blanks, in ASCII: `blocks` (hashes of the
block revisions, sorted), `content`, `geometry`, `measures` (hashes of the texts, or null) and `steps`
(operation to version).
"""


def schema_page() -> str:
    """The whole page."""
    tables = "\n".join(_table(table) for table in Base.metadata.sorted_tables)
    return f"{_OPENING}\n## Tables\n\n{tables}\n## Guards\n\n{_guards()}"


def _table(table: Table) -> str:
    lines = [f"### {table.name}", "", table.comment or "", "", "| column | type | meaning |", "|---|---|---|"]
    lines += [f"| `{column.name}` | {_type(column)} | {_meaning(column)} |" for column in table.columns]
    rules = [*_rules(table)]
    if rules:
        lines += ["", *rules]
    return "\n".join(lines) + "\n"


def _type(column: Column[object]) -> str:
    return f"{column.type}{' or null' if column.nullable else ''}"


def _meaning(column: Column[object]) -> str:
    parts = [column.comment] if column.comment else []
    if column.primary_key:
        parts.append("primary key")
    parts += [f"refers to `{key.target_fullname}`" for key in column.foreign_keys]
    return "; ".join(parts)


def _rules(table: Table) -> list[str]:
    rules = []
    for constraint in table.constraints:
        if isinstance(constraint, UniqueConstraint):
            rules.append(f"- unique: {', '.join(f'`{column.name}`' for column in constraint.columns)}")
        if isinstance(constraint, CheckConstraint):
            rules.append(f"- always: `{constraint.sqltext}`")
    rules += [
        f"- index: {', '.join(f'`{column.name}`' for column in index.columns)}" for index in table.indexes
    ]
    return sorted(rules)


def _guards() -> str:
    words = "Triggers refuse what must never happen, whichever program writes:\n\n"
    return words + "\n".join(f"- `{name}`: {_reason(GUARDS[name])}" for name in sorted(GUARDS)) + "\n"


def _reason(statement: str) -> str:
    return statement.split("'")[1]
