"""Answers of the server that are held back in the browser until a test lets them go."""

from playwright.sync_api import Page, Route

_TIMES = 200
_PAUSE = 50
"""ms between two looks whether something is asked, and how often it is looked."""


class HeldAnswers:
    """What is asked at an address waits; ``asked`` are the addresses, in the order of the asking."""

    def __init__(self, page: Page, address: str) -> None:
        self.asked: list[str] = []
        self._page = page
        self._waiting: list[Route] = []
        self._open = False
        page.route(address, self._hold)

    def let_go(self) -> None:
        """Let the first that waits be answered."""
        self._next().continue_()

    def lose(self) -> None:
        """Let the first that waits fail."""
        self._next().fulfill(status=500, body="")

    def let_all_go(self) -> None:
        """Let all that wait be answered, and hold back nothing any more."""
        self._open = True
        while self._waiting:
            self.let_go()

    def _hold(self, route: Route) -> None:
        self.asked.append(route.request.url)
        if self._open:
            route.continue_()
        else:
            self._waiting.append(route)

    def _next(self) -> Route:
        for _ in range(_TIMES):
            if self._waiting:
                return self._waiting.pop(0)
            self._page.wait_for_timeout(_PAUSE)
        raise AssertionError("nothing is asked for")
