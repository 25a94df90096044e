"""The locked requirements: exact, with hashes, the two lists in agreement, the build's own pinned alike."""

import re
import tomllib

from house import ROOT

PIN = re.compile(r"^(?P<name>[A-Za-z0-9._-]+)==(?P<version>[^\s;\\]+)", re.MULTILINE)
NAME = re.compile(r"^[A-Za-z0-9._-]+")


def pins(kind: str) -> dict[str, set[str]]:
    """The versions by name; more than one where the list names systems."""
    found: dict[str, set[str]] = {}
    for match in PIN.finditer((ROOT / "requirements" / f"{kind}.txt").read_text(encoding="utf-8")):
        found.setdefault(match["name"].lower().replace("_", "-"), set()).add(match["version"])
    return found


def project() -> dict[str, list[str]]:
    """What pyproject.toml needs to run and to build."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    return {"run": settings["project"]["dependencies"], "build": settings["build-system"]["requires"]}


def test_every_line_has_a_hash() -> None:
    for kind in ("runtime", "dev"):
        text = (ROOT / "requirements" / f"{kind}.txt").read_text(encoding="utf-8").replace("\\\n", " ")
        lines = [line for line in text.splitlines() if line and not line.startswith("#")]
        assert not [line for line in lines if "--hash=" not in line], kind


def test_the_dev_list_holds_the_runtime_list() -> None:
    runtime, dev = pins("runtime"), pins("dev")
    assert len(runtime) > 10
    assert {name: dev.get(name) for name in runtime} == runtime


def test_what_the_project_needs_is_locked() -> None:
    named = {match.group().lower() for line in project()["run"] if (match := NAME.match(line))}
    assert named <= set(pins("runtime"))
    listed = (ROOT / "requirements" / "runtime.in").read_text(encoding="utf-8").split()
    assert named == set(listed)


def test_what_the_build_needs_is_pinned_and_locked_alike() -> None:
    for line in project()["build"]:
        name, _, version = line.partition("==")
        assert pins("dev")[name] == {version}
