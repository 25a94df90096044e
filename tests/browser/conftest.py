"""A real server over a real book, and a real Chromium that may ask no foreign host."""

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

import find_chromium
from notchbook.workroom.page import STATIC
from support.workroom_page import BROWSER_ARGUMENTS, Workroom, served

PATIENCE = 20_000
"""ms; a loaded machine may be slow, and what never comes is missed all the same."""


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    place = find_chromium.find(os.environ, shutil.which)
    if place is None:
        pytest.skip(find_chromium.MISSING)
    if not (STATIC / "index.html").is_file():
        pytest.skip("the page is not built (npm run build in frontend/)")
    expect.set_options(timeout=PATIENCE)
    with sync_playwright() as tool:
        browser = tool.chromium.launch(executable_path=place, args=BROWSER_ARGUMENTS)
        yield browser
        browser.close()


@pytest.fixture
def workroom(chromium: Browser, tmp_path: Path) -> Iterator[Workroom]:
    """A workroom that is served; its pages fail the test when they throw or ask a foreign host."""
    with served(chromium, tmp_path / "studio.notchbook") as opened:
        yield opened
    assert opened.faults == []
    assert opened.foreign == []


@pytest.fixture
def table(workroom: Workroom) -> Page:
    """The table with the demonstration style on it."""
    return workroom.open()
