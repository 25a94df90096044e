"""What another site in the same browser can do: nothing."""

import threading
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, HTTPServer

import pytest
from playwright.sync_api import Page

from support.workroom_page import Workroom

pytestmark = pytest.mark.browser


class OtherSite(BaseHTTPRequestHandler):
    """An empty page of another origin."""

    def do_GET(self) -> None:
        self.send_response(200)
        self.end_headers()
        self.wfile.write(b"<!doctype html><title>other</title>")

    def log_message(self, format: str, *words: object) -> None:
        pass


@pytest.fixture
def other_site() -> Iterator[str]:
    server = HTTPServer(("127.0.0.1", 0), OtherSite)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()
    thread.join()
    server.server_close()


def test_another_site_can_neither_read_nor_write(workroom: Workroom, table: Page, other_site: str) -> None:
    own = workroom.address.split("?")[0]
    stranger = table.context.new_page()  # the same browser, with the cookie
    stranger.goto(other_site)
    tried = stranger.evaluate(
        """async (own) => {
          const asked = fetch(own + 'api/shelf', {credentials: 'include'});
          const read = await asked.then(answer => answer.text(), () => null);
          const sent = JSON.stringify({expected_version: 1, edit: {do: 'remove-step', step: 'waistband-1'}});
          const words = {method: 'POST', credentials: 'include', mode: 'no-cors', body: sent};
          await fetch(own + 'api/styles/3/edits', words).catch(() => null);
          return read;
        }""",
        own,
    )
    assert tried is None
    studio = workroom.kept()
    assert studio.list_styles()[0].version == 1
    studio.close()


def test_the_page_cannot_be_framed(workroom: Workroom, table: Page, other_site: str) -> None:
    stranger = table.context.new_page()
    stranger.goto(other_site)
    own = workroom.address.split("?")[0]
    stranger.evaluate(
        """own => {
          const frame = document.createElement('iframe');
          frame.src = own;
          document.body.append(frame);
        }""",
        own,
    )
    stranger.wait_for_timeout(500)
    assert all("Notchbook" not in frame.content() for frame in stranger.frames[1:])


def test_the_cookie_is_hidden_from_scripts_and_the_address_is_clean(workroom: Workroom, table: Page) -> None:
    assert table.evaluate("document.cookie") == ""
    assert "token" not in table.url
