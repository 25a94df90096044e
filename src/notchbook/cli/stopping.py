"""A stop from the keyboard while something is stored that must be told truly."""

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType

from notchbook.errors import InputError


@contextmanager
def stop_noted() -> Iterator[threading.Event]:
    """While it lasts Ctrl-C is only noted in the event, for the work to ask about where it can still go back.

    Else a stop could come between storing and saying so, and the answer would be that nothing was stored.
    Work that ends with ``import-stopped`` has gone back, and ends as any command that was stopped.
    """
    stopping = threading.Event()

    def note(_number: int, _frame: FrameType | None) -> None:
        stopping.set()

    if threading.current_thread() is not threading.main_thread():
        yield stopping
        return
    before = signal.signal(signal.SIGINT, note)
    try:
        yield stopping
    except InputError as error:
        if error.code == "import-stopped":
            raise KeyboardInterrupt from error
        raise
    finally:
        signal.signal(signal.SIGINT, before)
