"""The tables of a file, of the models, of the migrations and of the document are the same."""

from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Engine, create_engine, inspect

import make_schema_page
from notchbook.book import Book
from notchbook.book.guards import GUARDS
from notchbook.book.migrating import SCRIPTS
from notchbook.book.models import SCHEMA, Base
from notchbook.book.schema_doc import schema_page


def keeps_ids(engine: Engine) -> set[str]:
    """The tables whose ids are never given again (SQLite's word for it: AUTOINCREMENT)."""
    with engine.connect() as connection:
        rows = connection.exec_driver_sql("SELECT name, sql FROM sqlite_master WHERE type = 'table'")
        return {str(name) for name, sql in rows if "AUTOINCREMENT" in str(sql)}


def shape(engine: Engine) -> dict[str, object]:
    """What the database says about each table, its constraints and indexes, without their order."""
    look = inspect(engine)
    return {
        f"{table} {what.__name__}": sorted(str(sorted(item.items(), key=str)) for item in what(table))
        for table in Base.metadata.tables
        for what in (
            look.get_columns,
            look.get_unique_constraints,
            look.get_check_constraints,
            look.get_foreign_keys,
            look.get_indexes,
        )
    }


def test_migrations_make_what_the_models_say(book: Book) -> None:
    models = create_engine("sqlite://")
    Base.metadata.create_all(models)
    assert shape(book._engine) == shape(models)
    assert keeps_ids(book._engine) == keeps_ids(models) >= {"entries", "documents", "revisions", "events"}
    with book._engine.connect() as connection:
        assert compare_metadata(MigrationContext.configure(connection), Base.metadata) == []


def test_the_comparison_can_fail(book: Book) -> None:
    models = create_engine("sqlite://")
    Base.metadata.create_all(models)
    with models.begin() as connection:
        connection.exec_driver_sql("DROP INDEX ix_revisions_hash")
    assert shape(book._engine) != shape(models)


def test_the_newest_migration_is_the_schema() -> None:
    config = Config()
    config.set_main_option("script_location", SCRIPTS)
    scripts = ScriptDirectory.from_config(config)
    assert scripts.get_heads() == [f"{SCHEMA:04d}"]
    assert [script.revision for script in scripts.walk_revisions()] == [
        f"{number:04d}" for number in range(SCHEMA, 0, -1)
    ]


def test_the_document_is_up_to_date() -> None:
    assert make_schema_page.PAGE.read_text(encoding="utf-8") == make_schema_page.page()


def test_the_document_has_every_table_column_and_guard() -> None:
    page = schema_page()
    for table in Base.metadata.tables.values():
        assert f"### {table.name}\n\n{table.comment}" in page
        for column in table.columns:
            assert f"| `{column.name}` | {column.type}" in page
            assert column.comment or column.primary_key, f"{table.name}.{column.name} is not explained"
    assert all(f"- `{name}`: " in page for name in GUARDS)


def test_an_old_document_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(make_schema_page, "ROOT", tmp_path)
    monkeypatch.setattr(make_schema_page, "PAGE", tmp_path / "docs" / "book.md")
    monkeypatch.setattr("sys.argv", ["make_schema_page.py", "--check"])
    assert make_schema_page.main() == 1
    assert "out of date: docs/book.md" in capsys.readouterr().out
    monkeypatch.setattr("sys.argv", ["make_schema_page.py"])
    assert make_schema_page.main() == 0
    monkeypatch.setattr("sys.argv", ["make_schema_page.py", "--check"])
    assert make_schema_page.main() == 0
