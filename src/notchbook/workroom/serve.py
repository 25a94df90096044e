"""Starting the workroom on this computer and ending it in good order."""

import contextlib
import gc
import secrets
import socket
import sys
import threading
import webbrowser
from collections.abc import Iterator
from pathlib import Path

import uvicorn

from notchbook.app.studio import Studio
from notchbook.errors import OutputError
from notchbook.workroom.application import create_app

HOST = "127.0.0.1"


def serve(*, book: Path, port: int | None = None, open_browser: bool = True) -> None:
    """Serve the workroom for the book until she ends it (Ctrl+C); see :func:`workroom_server`."""
    with workroom_server(book, port or 0) as (server, address, listening):
        sys.stdout.write(f"The workroom is open: {address}\nEnd it with Ctrl+C.\n")
        sys.stdout.flush()
        if open_browser:
            threading.Timer(0.4, webbrowser.open, (address,)).start()
        with contextlib.suppress(KeyboardInterrupt):  # the server has ended in good order by then
            server.run(sockets=[listening])
        sys.stdout.write("The workroom is closed; everything is on disk.\n")


@contextlib.contextmanager
def workroom_server(book: Path, port: int = 0) -> Iterator[tuple[uvicorn.Server, str, socket.socket]]:
    """The server, the address with its token, and the socket that it listens on; the book is open.

    Port 0 takes a free one. An empty book gets the demonstration. Refused with OutputError
    ``workroom-port`` when the port is taken, and with BookError as the book says.
    """
    listening = _listen(port)
    studio = Studio.open(book)
    try:
        studio.first_time()
        threading.Thread(target=_warm, args=(studio,), daemon=True).start()
        token = secrets.token_urlsafe(24)
        config = uvicorn.Config(
            create_app(studio, token), log_level="warning", timeout_graceful_shutdown=3, server_header=False
        )
        address = f"http://{HOST}:{listening.getsockname()[1]}/?token={token}"
        yield uvicorn.Server(config), address, listening
    finally:
        studio.close()
        listening.close()


def _warm(studio: Studio) -> None:
    """Draw the first style and load all steps while the browser is still opening, so that the page finds
    them."""
    with contextlib.suppress(Exception):  # said in words when the page asks for the style or the steps
        for style in studio.list_styles()[:1]:
            studio.open_style(style.id)
        studio.step_choices()
    gc.collect()
    gc.freeze()  # the libraries stay for good: looking through them again stops an edit for 60 ms


def _listen(port: int) -> socket.socket:
    # With the protocol named asyncio sends small answers at once; without it head and body of an answer
    # wait for each other, some 40 ms.
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((HOST, port))
    except OSError as error:
        listening.close()
        raise OutputError("workroom-port", port=port, detail=error.strerror or str(error)) from error
    return listening
