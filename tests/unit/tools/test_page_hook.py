"""The build hook: when it builds the page, when it lets it be, and what it says without one."""

import importlib.util
from functools import partial
from pathlib import Path
from types import ModuleType

import pytest

from house import ROOT


@pytest.fixture
def hook(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """The hook's module, over a repository in a folder of the test's own, with an npm that takes notes."""
    spec = importlib.util.spec_from_file_location("hatch_build_under_test", ROOT / "hatch_build.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    for name, place in (("ROOT", ""), ("PAGE", "frontend"), ("STATIC", "static")):
        monkeypatch.setattr(module, name, tmp_path / place)
    for name in ("SKIP_PAGE", "REQUIRE_PAGE", "PAGE_TOOLS"):
        monkeypatch.delenv(f"NOTCHBOOK_{name}", raising=False)
    module.asked = []  # type: ignore[attr-defined]  # notes of the npm that stands in
    module.answers = {}  # type: ignore[attr-defined]  # exit codes by npm's first word

    def npm(words: list[str], page: Path) -> int:
        module.asked.append(" ".join(words))
        return int(module.answers.get(words[0], 0))

    monkeypatch.setattr(module, "npm", npm)
    monkeypatch.setattr(module, "build_page", partial(module.build_page, page=tmp_path / "frontend"))
    monkeypatch.setattr(module, "note_missing", partial(module.note_missing, static=tmp_path / "static"))
    return module


def page_of(hook: ModuleType) -> Path:
    """Give the repository a page to build."""
    page: Path = hook.PAGE
    page.mkdir()
    (page / "package.json").write_text("{}")
    (page / "package-lock.json").write_text("{}")
    return page


def initialize(hook: ModuleType) -> None:
    """Run the hook as the build does, on an object that skips the backend's own set-up."""
    hook.PageHook.initialize(object.__new__(hook.PageHook), "editable", {})


def test_without_a_page_nothing_is_built(hook: ModuleType) -> None:
    initialize(hook)
    assert hook.asked == []
    assert not hook.STATIC.exists()


def test_a_required_page_without_sources_is_an_error(
    hook: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NOTCHBOOK_REQUIRE_PAGE", "1")
    with pytest.raises(SystemExit, match="required"):
        initialize(hook)


def test_the_page_is_built_and_an_old_note_is_taken_away(hook: ModuleType) -> None:
    page_of(hook)
    hook.STATIC.mkdir()
    (hook.STATIC / "MISSING").write_text("old")
    initialize(hook)
    assert hook.asked == ["ci --no-audit --no-fund --omit=dev", "run build"]
    assert not (hook.STATIC / "MISSING").exists()


def test_modules_are_fetched_again_only_when_the_lock_changed(
    hook: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = page_of(hook)
    initialize(hook)
    initialize(hook)
    assert hook.asked[2:] == ["run build"]
    monkeypatch.setenv("NOTCHBOOK_PAGE_TOOLS", "1")
    initialize(hook)
    assert hook.asked[3:] == ["ci --no-audit --no-fund", "run build"]
    monkeypatch.delenv("NOTCHBOOK_PAGE_TOOLS")
    initialize(hook)
    assert hook.asked[5:] == ["run build"]
    (page / "package-lock.json").write_text('{"changed": true}')
    initialize(hook)
    assert hook.asked[6:] == ["ci --no-audit --no-fund --omit=dev", "run build"]


@pytest.mark.parametrize(("step", "words"), [("ci", "could not be fetched"), ("run", "`npm run build`")])
def test_a_page_that_cannot_be_built_leaves_its_reason(
    hook: ModuleType, monkeypatch: pytest.MonkeyPatch, step: str, words: str
) -> None:
    page_of(hook)
    hook.answers[step] = 1
    initialize(hook)
    assert words in (hook.STATIC / "MISSING").read_text()
    monkeypatch.setenv("NOTCHBOOK_REQUIRE_PAGE", "1")
    with pytest.raises(SystemExit, match="not built"):
        initialize(hook)


def test_the_page_is_skipped_when_told_so(hook: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    page_of(hook)
    monkeypatch.setenv("NOTCHBOOK_SKIP_PAGE", "1")
    initialize(hook)
    assert hook.asked == []


def test_a_source_distribution_carries_the_built_page(hook: ModuleType) -> None:
    page_of(hook)
    hook.STATIC.mkdir()
    (hook.STATIC / "index.html").write_text("")
    (hook.ROOT / "PKG-INFO").write_text("")
    initialize(hook)
    assert hook.asked == []
