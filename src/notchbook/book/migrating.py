"""From an older schema to the one of today, in one transaction, after a copy of the file."""

import sqlite3
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Final

from alembic import command
from alembic.config import Config
from alembic.util.exc import CommandError
from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError, SQLAlchemyError

from notchbook.book.connecting import WRITES, Journal, make_engine
from notchbook.book.copying import copy_file
from notchbook.book.faults import refusal, told_in_words
from notchbook.book.guards import put_on_guards, take_off_guards
from notchbook.book.models import APPLICATION_ID, SCHEMA
from notchbook.book.placing import made_beside
from notchbook.book.settings import Settings
from notchbook.errors import BookError

SCRIPTS: Final = "notchbook.book:migrations"
"""Where the migrations are, as a place in the package: right in a wheel too."""

_ONE_AT_A_TIME: Final = threading.Lock()
"""Alembic hands its connection to the migrations through a global name: never from two threads at once."""


def build(path: Path, settings: Settings) -> None:
    """Make the tables of a new book in a file that does not exist yet."""
    with told_in_words(path):
        _run(path, settings, Journal.ROLLBACK, before=_nothing, mode="mode=rwc")


def migrate(path: Path, settings: Settings, journal: Journal) -> Path | None:
    """Bring an older book to the schema of today; the copy of the old file, if there was work to do."""
    copies: list[Path] = []

    def keep_copy() -> None:
        copies.append(copy_before(path, settings))

    with told_in_words(path):
        _run(path, settings, journal, before=keep_copy, mode="mode=rw")
    return copies[0] if copies else None


def copy_before(path: Path, settings: Settings) -> Path:
    """A copy of the book beside it, under a name that says before which schema it was made."""
    place = _free_name(path)
    with made_beside(place) as draft:
        copy_file(path, draft, settings, "mode=rw")
    return place


def _free_name(path: Path) -> Path:
    number = 1
    while True:
        again = "" if number == 1 else f"-{number}"
        place = path.with_name(f"{path.stem}-before-schema-{SCHEMA}{again}{path.suffix}")
        if not place.exists():
            return place
        number += 1


def _nothing() -> None:
    """A new book needs no copy."""


def _run(path: Path, settings: Settings, journal: Journal, before: Callable[[], None], mode: str) -> None:
    engine = make_engine(path, settings, journal, mode)
    try:
        with _ONE_AT_A_TIME, engine.connect().execution_options(**{WRITES: True}) as connection:
            # Copying a table drops the old one; foreign keys are checked at the end instead. This can
            # only be switched outside a transaction, so on the driver's connection.
            driver = connection.connection.dbapi_connection
            if not isinstance(driver, sqlite3.Connection):
                raise TypeError("the book is made for SQLite")
            driver.execute("PRAGMA foreign_keys = OFF")
            with connection.begin():
                _upgrade(connection, path, before)
    finally:
        engine.dispose()


def _upgrade(connection: Connection, path: Path, before: Callable[[], None]) -> None:
    """Under the write lock: look again (another program may have been faster), copy, upgrade, check."""
    schema = int(connection.exec_driver_sql("PRAGMA user_version").scalar_one())
    if schema >= SCHEMA:
        return
    before()
    config = Config()
    config.set_main_option("script_location", SCRIPTS)
    config.attributes["connection"] = connection
    try:
        take_off_guards(connection)
        command.upgrade(config, f"{SCHEMA:04d}")
        put_on_guards(connection)
    except DBAPIError as error:
        told = refusal(error.orig, path) if isinstance(error.orig, sqlite3.Error) else None
        # A full disk is told as such; what the statements themselves did wrong is a failed migration.
        raise (told if isinstance(told, BookError) else _failed(path, schema, str(error.orig))) from error
    except (CommandError, SQLAlchemyError) as error:
        raise _failed(path, schema, str(error)) from error
    if connection.exec_driver_sql("PRAGMA foreign_key_check").first() is not None:
        raise _failed(path, schema, "a reference is lost")
    connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
    connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA}")


def _failed(path: Path, schema: int, detail: str) -> BookError:
    return BookError("book-migration-failed", path=str(path), schema=schema, wanted=SCHEMA, detail=detail)
