"""How long an edit takes in the workroom: from the key to the redrawn sheet, in a real Chromium.

    python benchmarks/bench_workroom.py [edits]

A measure is typed on the Measures page; the clock runs in the browser from the input event to the
animation frame after the outline has changed. Each edit asks the server to draft the style anew and to
write the answer; nothing is taken from a cache, for no value comes twice. The checks are asked for when
the typing rests and are not in this time.
"""

from __future__ import annotations

import json
import statistics
import sys
import tempfile
import threading
import time
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from notchbook.workroom.serve import workroom_server

ROOT = Path(__file__).resolve().parent.parent
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking"]

TIMED = """
([text, edge]) => new Promise(done => {
  const path = () => document.querySelector(`[data-edge='${edge}']`).getAttribute('d');
  const field = document.querySelector("[data-measure='hip_girth'] input");
  const before = path();
  const start = performance.now();
  field.focus();
  field.value = text;
  field.dispatchEvent(new InputEvent('input', {bubbles: true}));
  const look = () => path() === before ? requestAnimationFrame(look) : done(performance.now() - start);
  requestAnimationFrame(look);
})
"""

EDGE = "skirt.front/side_seam"


def bench_workroom(edits: int = 100) -> dict[str, float]:
    """p50 and p95 in ms of so many edits (key to redrawn sheet), and the time to open the page."""
    chromium = _chromium()
    with (
        tempfile.TemporaryDirectory() as folder,
        workroom_server(Path(folder) / "bench.notchbook") as (server, address, listening),
    ):
        thread = threading.Thread(target=lambda: server.run(sockets=[listening]))
        thread.start()
        try:
            while not server.started:
                time.sleep(0.01)
            with sync_playwright() as tool:
                browser = tool.chromium.launch(executable_path=chromium, args=ARGUMENTS)
                page = browser.new_page()
                opened = _opened(page, address)
                taken = [_edit(page, 95.0 + index * 0.1) for index in range(edits)]
                browser.close()
        finally:
            server.should_exit = True
            thread.join()
    ordered = sorted(taken)
    return {
        "edits": float(edits),
        "open_ms": round(opened, 1),
        "edit_p50_ms": round(statistics.median(ordered), 1),
        "edit_p95_ms": round(ordered[min(len(ordered) - 1, round(0.95 * len(ordered)))], 1),
    }


def _chromium() -> str:
    sys.path.insert(0, str(ROOT / "tools"))
    import find_chromium

    return find_chromium.find_or_install()


def _opened(page: Page, address: str) -> float:
    start = time.perf_counter()
    page.goto(f"{address}#measures")
    page.wait_for_selector("[data-measure]")
    page.get_by_role("button", name="on the pattern").click()
    page.wait_for_selector("[data-edge]")
    return (time.perf_counter() - start) * 1000.0


def _edit(page: Page, centimeters: float) -> float:
    return float(page.evaluate(TIMED, [f"{centimeters:.1f}", EDGE]))


if __name__ == "__main__":
    print(json.dumps(bench_workroom(int(sys.argv[1]) if len(sys.argv) > 1 else 100), indent=1))
