"""A served workroom and its pages in the browser, for tests and the bench."""

import contextlib
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import uvicorn
from playwright.sync_api import Browser, BrowserContext, Locator, Page, Route, ViewportSize

from notchbook.app.studio import Studio
from notchbook.workroom.serve import workroom_server

WIDE: ViewportSize = {"width": 1440, "height": 900}
BROWSER_ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]

LOW: ViewportSize = {"width": 1440, "height": 820}
TABLET: ViewportSize = {"width": 1024, "height": 768}
UPRIGHT: ViewportSize = {"width": 768, "height": 1024}


@dataclass
class Workroom:
    """Opens pages; remembers what they threw (``faults``) and which foreign hosts they asked."""

    browser: Browser
    address: str
    book: Path
    server: uvicorn.Server
    faults: list[str] = field(default_factory=list)
    foreign: list[str] = field(default_factory=list)
    _contexts: list[BrowserContext] = field(default_factory=list)

    def open(
        self, room: str = "table", size: ViewportSize = WIDE, ready: str | None = None, **context: Any
    ) -> Page:
        """A page in a window of its own, its drawing or its lines (or what ``ready`` names) there."""
        window = self.browser.new_context(viewport=size, reduced_motion="reduce", **context)
        self._contexts.append(window)
        page = window.new_page()
        page.on("pageerror", lambda error: self.faults.append(str(error)))
        page.route("**/*", self._let_own_pass)
        page.goto(f"{self.address}#{room}")
        page.wait_for_selector(ready or ("[data-measure]" if room == "measures" else "[data-edge]"))
        return page

    def kept(self) -> Studio:
        """The book opened anew, as another program would see it; to be closed."""
        return Studio.open(self.book)

    def close(self) -> None:
        """Close every window."""
        for window in self._contexts:
            window.close()

    def _let_own_pass(self, route: Route) -> None:
        if urlsplit(route.request.url).hostname == "127.0.0.1":
            route.continue_()
            return
        self.foreign.append(route.request.url)
        route.abort()


@contextlib.contextmanager
def served(browser: Browser, book: Path, port: int = 0) -> Iterator[Workroom]:
    """A workroom over the book that is served until the end of the block; its windows are closed then."""
    with workroom_server(book, port) as (server, address, listening):
        thread = threading.Thread(target=lambda: server.run(sockets=[listening]))
        thread.start()
        while not server.started:
            time.sleep(0.01)
        workroom = Workroom(browser, address, book, server)
        try:
            yield workroom
        finally:
            workroom.close()
            server.should_exit = True
            thread.join(20)


def edge_path(page: Page, name: str) -> str:
    """The drawn path of an edge."""
    return page.locator(f'[data-edge="{name}"]').get_attribute("d") or ""


def step(page: Page, step_id: str) -> Locator:
    """One step of the list."""
    return page.locator(f'[data-step="{step_id}"]')


def until_drawn(page: Page, name: str, before: str) -> None:
    """Wait until an edge is drawn otherwise than before."""
    page.wait_for_function(
        "([name, before]) => document.querySelector(`[data-edge='${name}']`)?.getAttribute('d') !== before",
        arg=[name, before],
    )
