"""The environment's stamps: equal when nothing changed, different when anything did."""

from pathlib import Path

import pytest

import venv_setup
from house import TaskFailed
from venv_setup import fingerprint, is_stamped, page_is_missing, page_sources, put_stamp, refuse_old_python


def test_an_old_python_is_refused_in_clear_words() -> None:
    with pytest.raises(TaskFailed, match=r"needs Python 3\.11 or newer; this is Python 3\.9"):
        refuse_old_python((3, 9))
    refuse_old_python((3, 11))
    refuse_old_python((4, 0))


def test_a_fingerprint_changes_with_content_name_and_absence(tmp_path: Path) -> None:
    first, second = tmp_path / "a.txt", tmp_path / "b.txt"
    first.write_text("one")
    second.write_text("two")
    whole = fingerprint([first, second], tmp_path)
    assert whole == fingerprint([second, first, first], tmp_path)
    second.write_text("three")
    changed = fingerprint([first, second], tmp_path)
    second.rename(tmp_path / "c.txt")
    renamed = fingerprint([first, tmp_path / "c.txt"], tmp_path)
    absent = fingerprint([first, second], tmp_path)
    assert len({whole, changed, renamed, absent, fingerprint([first], tmp_path)}) == 5


def test_content_cannot_slip_from_one_file_into_the_next(tmp_path: Path) -> None:
    first, second = tmp_path / "a", tmp_path / "b"
    first.write_text("xy")
    second.write_text("z")
    before = fingerprint([first, second], tmp_path)
    first.write_text("x")
    second.write_text("yz")
    assert fingerprint([first, second], tmp_path) != before


def test_stamps(tmp_path: Path) -> None:
    stamps = tmp_path / "stamps"
    assert not is_stamped("dev", "abc", stamps)
    put_stamp("dev", "abc", stamps)
    assert is_stamped("dev", "abc", stamps)
    assert not is_stamped("dev", "abd", stamps)
    assert not is_stamped("runtime", "abc", stamps)


def test_the_page_is_made_of_its_sources_not_of_what_was_installed(tmp_path: Path) -> None:
    for name in ("src/main.ts", "package.json", "node_modules/x/index.js", "dist/app.js"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("")
    assert {path.relative_to(tmp_path).as_posix() for path in page_sources(tmp_path)} == {
        "src/main.ts",
        "package.json",
    }
    assert page_sources(tmp_path / "absent") == []


def test_a_page_is_missing_only_when_it_has_sources_and_is_wanted(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("NOTCHBOOK_SKIP_PAGE", raising=False)
    page, static = tmp_path / "frontend", tmp_path / "static"
    page.mkdir()
    static.mkdir()
    assert not page_is_missing(page, static)
    (page / "package.json").write_text("{}")
    assert page_is_missing(page, static)
    monkeypatch.setenv("NOTCHBOOK_SKIP_PAGE", "1")
    assert not page_is_missing(page, static)
    monkeypatch.delenv("NOTCHBOOK_SKIP_PAGE")
    (static / "index.html").write_text("")
    assert not page_is_missing(page, static)


class Installer:
    """Stands in for pip and venv: notes what it was asked."""

    def __init__(self) -> None:
        self.asked: list[str] = []

    def __call__(self, what: str, *command: object, environment: dict[str, str] | None = None) -> None:
        self.asked.append(f"{what}: {' '.join(str(word) for word in command)}")


@pytest.fixture
def installer(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Installer:
    """A repository in a folder of the test's own, with an installer that only takes notes."""
    (tmp_path / "requirements").mkdir()
    for name in ("runtime", "dev"):
        (tmp_path / "requirements" / f"{name}.txt").write_text(f"{name}==1\n")
    for name in ("pyproject.toml", "hatch_build.py"):
        (tmp_path / name).write_text("1")
    found = Installer()
    monkeypatch.setattr(venv_setup, "must_run", found)
    monkeypatch.setattr(venv_setup, "ROOT", tmp_path)
    monkeypatch.setattr(venv_setup, "VENV", tmp_path / ".venv")
    monkeypatch.setattr(venv_setup, "STAMPS", tmp_path / ".venv" / "stamps")
    monkeypatch.setattr(venv_setup, "venv_program", lambda name: tmp_path / ".venv" / name)
    monkeypatch.setattr(venv_setup, "page_sources", list)
    monkeypatch.setattr(venv_setup, "fingerprint", lambda paths: fingerprint(paths, tmp_path))
    monkeypatch.setattr(
        venv_setup, "is_stamped", lambda name, value: is_stamped(name, value, venv_setup.STAMPS)
    )
    monkeypatch.setattr(
        venv_setup, "put_stamp", lambda name, value: put_stamp(name, value, venv_setup.STAMPS)
    )
    return found


def test_a_second_call_does_nothing(installer: Installer, tmp_path: Path) -> None:
    venv_setup.ensure("dev")
    assert [line.partition(":")[0] for line in installer.asked] == [
        "Making .venv",
        "Installing the requirements",
        "Installing the project",
    ]
    assert "--require-hashes" in installer.asked[1]
    assert "--no-deps" in installer.asked[2]
    assert "--no-build-isolation" in installer.asked[2]
    (tmp_path / ".venv" / "python").write_text("")
    installer.asked.clear()
    venv_setup.ensure("dev")
    venv_setup.ensure("runtime")
    assert installer.asked == []


def test_only_what_changed_is_done_again(installer: Installer, tmp_path: Path) -> None:
    venv_setup.ensure("runtime")
    (tmp_path / ".venv" / "python").write_text("")
    assert "--no-build-isolation" not in installer.asked[2]
    installer.asked.clear()
    (tmp_path / "pyproject.toml").write_text("2")
    venv_setup.ensure("runtime")
    assert [line.partition(":")[0] for line in installer.asked] == ["Installing the project"]
    installer.asked.clear()
    venv_setup.ensure("dev")
    assert [line.partition(":")[0] for line in installer.asked] == [
        "Installing the requirements",
        "Installing the project",
    ]
