"""Takes the pictures of the workroom for the documents (docs/pictures): the invented demonstration.

    python tools/make_pictures.py

The real server and a real Chromium as in tests/browser; each picture becomes a palette PNG of at most
200 kB. Needs the built page.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from house import ROOT, TaskFailed, say

if TYPE_CHECKING:
    from playwright.sync_api import Page

PICTURES = ROOT / "docs" / "pictures"
MOST_BYTES = 200_000
COLORS = 200
RESTED = "papers too"
"""Words of the proven line that are there when all checks have come."""


def main() -> int:
    """Take the pictures; the exit code."""
    sys.path.insert(0, str(ROOT / "tests"))
    from playwright.sync_api import sync_playwright

    import find_chromium
    from support.workroom_page import BROWSER_ARGUMENTS, served

    place = find_chromium.find(os.environ, shutil.which)
    if place is None:
        raise TaskFailed(find_chromium.MISSING)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as tool:
        browser = tool.chromium.launch(executable_path=place, args=BROWSER_ARGUMENTS)
        with served(browser, Path(folder) / "pictures.notchbook") as workroom:
            keep(table(workroom.open("table")), "table")
            keep(measures(workroom.open("measures")), "measures")
        browser.close()
    return 0


def table(page: Page) -> Page:
    """The table with a step that is looked at: before in blue dashes, after in ink."""
    page.get_by_text(RESTED).wait_for()
    page.locator('[data-step="skirt-1"] .head').click()
    page.locator('[data-step="skirt-1"]').get_by_label("length", exact=True).fill("54")
    page.locator(".before path").first.wait_for(state="attached")
    return page


def measures(page: Page) -> Page:
    """A measure with a lost digit: the slip is offered, the figure shows the way of its tape."""
    page.get_by_label("held against").select_option("women")
    depth = page.locator('[data-measure="hip_depth"] input')
    depth.fill("2.05")
    depth.press("Enter")
    page.get_by_role("button", name="20.5 cm was meant").wait_for()
    return page


def keep(page: Page, name: str) -> None:
    """Write the picture of the page; TaskFailed when it is too large for the documents."""
    from PIL import Image

    page.wait_for_timeout(800)  # the findings of the look come after a rest
    shot = Image.open(BytesIO(page.screenshot())).convert("RGB")
    few = shot.quantize(colors=COLORS, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE)
    PICTURES.mkdir(parents=True, exist_ok=True)
    target = PICTURES / f"{name}.png"
    few.save(target, optimize=True)
    size = target.stat().st_size
    if size > MOST_BYTES:
        raise TaskFailed(f"{target.name} has {size} bytes, more than {MOST_BYTES}.")
    say(f"{target.relative_to(ROOT)}: {size // 1000} kB")


if __name__ == "__main__":
    sys.exit(main())
