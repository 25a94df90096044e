"""The studio as a whole: one book, open for work."""

from pathlib import Path

from notchbook.app.demo import demo_client, demo_form, demo_fuller_client, demo_more_forms, demo_recipe
from notchbook.app.studio.bodies import Bodies
from notchbook.app.studio.charts import Charts
from notchbook.app.studio.clients import Clients
from notchbook.app.studio.styles import Styles
from notchbook.book import Book


class Studio(Styles, Bodies, Charts, Clients):
    """A book open for work. Functions may be called from several threads; each sees whole states."""

    @classmethod
    def open(cls, path: Path) -> "Studio":
        """Open the book at this place, or make a new one there; see :meth:`Book.open_or_create`."""
        return cls(Book.open_or_create(path))

    @classmethod
    def open_existing(cls, path: Path) -> "Studio":
        """Open the book at this place; BookError ``book-missing`` when there is none."""
        return cls(Book.open(path))

    def close(self) -> None:
        """Let go of the book."""
        with self._lock:
            self._book.close()

    def first_time(self) -> None:
        """Put the invented demonstration into a book that holds nothing yet."""
        with self._lock:
            if self._book.list():
                return
            form = self._add_body(demo_form(), "first use")
            for body in (demo_client(), *demo_more_forms(), demo_fuller_client()):
                self._add_body(body, "first use")
            recipe = demo_recipe(demo_form())
            self._add_style(recipe, form.id, recipe.number, "first use")

    def notice(self) -> str | None:
        """What is to be said about where the book lies, if anything."""
        return self._book.notice

    def backup(self, path: Path) -> Path:
        """A verified copy of the whole book as one file."""
        return self._book.backup(path).path
