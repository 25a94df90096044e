"""A style as one file: the recipe, the measures it was run on, the geometry and closures that came out."""

import json
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from notchbook.app.curing import completed_or_offering, taking
from notchbook.app.drift import drift_findings
from notchbook.app.examining import examine, subject_of
from notchbook.app.needs.of_steps import needs_of_recipe
from notchbook.app.offered_cure import OfferedCure
from notchbook.body import MeasureSet, refuse_inconsistent, set_from_data, set_to_data
from notchbook.checks import Closure, Report, closures, closures_data, closures_from_data
from notchbook.errors import InputError
from notchbook.finish import HouseTable
from notchbook.output.files import write_file
from notchbook.pattern import Finding, Pattern, pattern_from_data, pattern_to_data
from notchbook.recipe import (
    Recipe,
    Replay,
    canonical_json,
    recipe_from_data,
    recipe_to_data,
    replay,
)

STYLE_FORMAT = 1
"""Version of this form of file."""

LARGEST_STYLE = 20_000_000
"""Bytes; far above any style, far below what would stop the machine."""


@dataclass(frozen=True, slots=True)
class StyleFile:
    """What a style file holds. ``pattern`` is the geometry as stored, not as it would be drawn now;
    ``closures`` are what was measured on it then (none in a file of an older release)."""

    recipe: Recipe
    measures: MeasureSet
    pattern: Pattern | None
    closures: tuple[Closure, ...] = ()


def style_data(replay: Replay) -> dict[str, Any]:
    """The style as JSON-ready data."""
    return {
        "format": "notchbook style",
        "format_version": STYLE_FORMAT,
        "recipe": recipe_to_data(replay.recipe),
        "measures": set_to_data(replay.measures),
        "step_versions": {record.operation: record.version for record in replay.recipe.steps},
        "pattern": pattern_to_data(replay.pattern),
        "closures": closures_data(closures(subject_of(replay))),
    }


def write_style(replay: Replay, path: Path) -> None:
    """Write the style file; whole or not at all."""
    write_file(path, canonical_json(style_data(replay)).encode("utf-8"))


def read_style(path: Path) -> StyleFile:
    """Read a style file.

    Refused with InputError: ``style-file-unreadable``, ``style-too-large``, ``style-not-json``,
    ``style-not-a-style``, ``style-newer`` and what recipe, measures and pattern refuse.
    """
    data = _json(path)
    if not isinstance(data, dict) or data.get("format") != "notchbook style":
        raise InputError("style-not-a-style", path=str(path))
    version = data.get("format_version")
    if not isinstance(version, int) or version > STYLE_FORMAT:
        raise InputError("style-newer", path=str(path), found=version, known=STYLE_FORMAT)
    stored = data.get("pattern")
    return StyleFile(
        recipe=recipe_from_data(data.get("recipe")),
        measures=set_from_data(data.get("measures")),
        pattern=pattern_from_data(stored) if isinstance(stored, dict) else None,
        closures=closures_from_data(data.get("closures", [])),
    )


def read_recipe(path: Path) -> Recipe:
    """The recipe of a style file, or of a file that holds a recipe alone; refused as :func:`read_style`."""
    data = _json(path)
    if isinstance(data, dict) and data.get("format") == "notchbook recipe":
        return recipe_from_data(data)
    return read_style(path).recipe


def run_style(style: StyleFile, measures: MeasureSet | None = None) -> Replay:
    """Run the recipe of a style on its own measures, or on another body.

    What stops the recipe is raised (a lost name, a draft refused), never returned as a half-made pattern.
    """
    return run_style_taking(style, measures)[0]


def run_style_taking(
    style: StyleFile, measures: MeasureSet | None = None, words: Sequence[str] = ()
) -> tuple[Replay, tuple[OfferedCure, ...]]:
    """As :func:`run_style`, with cures taken by their word (see ``curing``); and which were taken."""
    return run_recipe_taking(style.recipe, measures or style.measures, words)


def run_recipe_taking(
    recipe: Recipe, body: MeasureSet, words: Sequence[str] = ()
) -> tuple[Replay, tuple[OfferedCure, ...]]:
    """As :func:`run_style_taking`, for a recipe and a body."""
    refuse_inconsistent(body)
    body.require(needs_of_recipe(recipe, body).needed)
    run, taken = taking(replay(recipe, body), words)
    return completed_or_offering(run), taken


def examine_style(style: StyleFile, run: Replay, house: HouseTable | None = None) -> Report:
    """The report on a run of a stored style; on its own measures, what has drifted is among the findings."""
    report = examine(run, house)
    return replace(report, findings=(*drift_of(style, run), *report.findings))


def drift_of(style: StyleFile, run: Replay) -> tuple[Finding, ...]:
    """What of the stored geometry would come out otherwise now; nothing on another body, where it must."""
    if style.pattern is None or run.measures != style.measures:
        return ()
    return drift_findings(style.pattern, run.pattern)


def _json(path: Path) -> Any:
    try:
        if path.stat().st_size > LARGEST_STYLE:
            raise InputError("style-too-large", path=str(path), most=LARGEST_STYLE)
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        detail = getattr(error, "strerror", None) or "it is not written in UTF-8"
        raise InputError("style-file-unreadable", path=str(path), detail=detail) from error
    try:
        return json.loads(text)
    except (ValueError, RecursionError) as error:
        raise InputError("style-not-json", path=str(path), detail=str(error)) from error
