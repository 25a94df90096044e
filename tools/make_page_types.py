"""Writes the types of the page's calls (frontend/src/server/api.d.ts) from the server's own forms.

``--check`` writes nothing and says whether the file is up to date. Needs the tools of the page
(NOTCHBOOK_PAGE_TOOLS=1 when it was built).
"""

from __future__ import annotations

import json
import sys
import tempfile
from pathlib import Path
from typing import Any

from house import PAGE, ROOT, TaskFailed, say

TYPES = PAGE / "src" / "server" / "api.d.ts"


def made_types() -> str:
    """The types as they should be; TaskFailed when they cannot be made."""
    sys.path.insert(0, str(ROOT))
    import hatch_build

    with tempfile.TemporaryDirectory() as folder:
        form, types = Path(folder) / "openapi.json", Path(folder) / "api.d.ts"
        form.write_text(json.dumps(server_forms()), encoding="utf-8")
        if hatch_build.npm(["exec", "--offline", "--", "openapi-typescript", str(form), "-o", str(types)]):
            raise TaskFailed("The types were not made; are the tools of the page installed?")
        return types.read_text(encoding="utf-8")


def server_forms() -> dict[str, Any]:
    """The forms of all calls as the server declares them (OpenAPI)."""
    from notchbook.app.studio import Studio
    from notchbook.workroom.application import create_app

    with tempfile.TemporaryDirectory() as folder:
        studio = Studio.open(Path(folder) / "types.notchbook")
        try:
            return create_app(studio, "").openapi()
        finally:
            studio.close()


def main(words: list[str]) -> int:
    """Write or check; the exit code."""
    made = made_types()
    if "--check" in words:
        fits = TYPES.is_file() and TYPES.read_text(encoding="utf-8") == made
        say("page types: up to date" if fits else "page types: run tools/make_page_types.py")
        return 0 if fits else 1
    TYPES.parent.mkdir(parents=True, exist_ok=True)
    TYPES.write_text(made, encoding="utf-8")
    say(f"page types: {TYPES.relative_to(ROOT)}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
