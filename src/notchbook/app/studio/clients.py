"""Personal data in the studio: a client under a code, her data handed out, her data erased."""

from pathlib import Path

from notchbook.app.personal_data.codes import CodeReport, CodeWish, free_code, keep_under_code, name_stands_in
from notchbook.app.personal_data.erasures import (
    ErasurePlan,
    ErasureReport,
    ErasureWish,
    erase_client,
    erasure_plan,
)
from notchbook.app.personal_data.export import client_archive, export_client
from notchbook.app.personal_data.mentions import Mention
from notchbook.app.studio.desk import Desk


class Clients(Desk):
    """The part of the studio that handles personal data. A client is any entry of measures."""

    def find_client(self, number: str) -> int:
        """The body with this number, such as ``M-102``; ``book-number-missing``."""
        with self._lock:
            return self._book.find(number).id

    def free_code(self, body: int) -> str:
        """A code that could stand for the name of this body, such as K-102."""
        with self._lock:
            return free_code(self._book, body)

    def name_stands_in(self, body: int, further: tuple[str, ...] = (), code: str = "") -> tuple[Mention, ...]:
        """Where the name of this body (and ``further`` spellings) stands in texts of other entries.

        Each is told with what it becomes when the code is put in the stead of the name there too.
        """
        with self._lock:
            return name_stands_in(self._book, body, further, code)

    def keep_under_code(self, body: int, expected_version: int, wish: CodeWish) -> CodeReport:
        """Put a code in the stead of the name; see notchbook.app.personal_data.codes."""
        with self._lock:
            report = keep_under_code(self._book, body, expected_version, wish)
            self._runs.clear()
            return report

    def export_client(self, body: int, path: Path) -> Path:
        """Her measures, their history and the styles for her as one archive (zip) that needs no program."""
        with self._lock:
            return export_client(self._book, body, path)

    def client_archive(self, body: int) -> bytes:
        """The same archive, to be handed on."""
        with self._lock:
            return client_archive(self._book, body)

    def erasure_plan(self, body: int, further: tuple[str, ...] = ()) -> ErasurePlan:
        """What erasing this body would take; nothing is changed."""
        with self._lock:
            return erasure_plan(self._book, body, further)

    def erase_client(self, body: int, expected_version: int, wish: ErasureWish) -> ErasureReport:
        """Erase this body; see notchbook.app.personal_data.erasures."""
        with self._lock:
            report = erase_client(self._book, body, expected_version, wish)
            self._runs.clear()
            return report
