"""The page itself: files that the build has made, or a plain page that says what is missing."""

from html import escape
from pathlib import Path

from fastapi import FastAPI
from fastapi.responses import FileResponse, HTMLResponse, Response
from fastapi.staticfiles import StaticFiles

STATIC = Path(__file__).parent / "static"

_MISSING = """<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Notchbook: the page is missing</title>
<body style="font: 18px/1.5 sans-serif; max-width: 38em; margin: 4em auto; color: #1d1c19">
<h1>The page of the workroom is missing</h1>
<p>{reason}</p>
<p>The book and the command line work without it. To make the page, install Notchbook again where the
npm registry can be reached (<code>pip install .</code>), or run <code>npm ci</code> and
<code>npm run build</code> in <code>frontend/</code>.</p>
</body></html>"""


def serve_page(app: FastAPI, static: Path = STATIC) -> None:
    """Serve the built page at ``/``; every file of it has its content in its name and is kept long."""
    assets = static / "assets"
    if assets.is_dir():
        app.mount("/assets", StaticFiles(directory=assets), name="assets")

    @app.get("/", include_in_schema=False)
    def index() -> Response:
        place = static / "index.html"
        if not place.is_file():
            return HTMLResponse(_MISSING.format(reason=escape(_reason(static))), status_code=503)
        return FileResponse(place, headers={"cache-control": "no-cache"})

    @app.get("/favicon.svg", include_in_schema=False)
    def mark() -> Response:
        place = static / "favicon.svg"
        return FileResponse(place) if place.is_file() else Response(status_code=404)


def _reason(static: Path) -> str:
    note = static / "MISSING"
    if note.is_file():
        return note.read_text(encoding="utf-8").strip()
    return "It was not built when Notchbook was installed."
