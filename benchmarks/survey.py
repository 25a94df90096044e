"""The skirt on every body of the survey: how many close, how well, which are refused and why.

Run by `make survey`; writes docs/survey/skirt.md and docs/survey/skirt.json. `--sample N` takes a seeded
part and prints only.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import sys
import time
from collections import Counter
from collections.abc import Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any, get_args

import numpy as np

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks")]

from make_bodies import Group, Level, SurveyBody, bodies
from notchbook.app.drafting import draft
from notchbook.app.eases.ease_rows import ease_table
from notchbook.app.examining import examine
from notchbook.blocks.skirt import SkirtParameters
from notchbook.body import MeasureSet, refuse_inconsistent
from notchbook.errors import NotchbookError
from notchbook.pattern import Severity
from notchbook.recipe import definition
from notchbook.units import parse_length
from outside import skirt_closures

CURE = "hip-ease-raised"
"""The finding of the draft that says it took a cure."""

LOWERED = parse_length(SkirtParameters().center_back_lowered, None)
"""mm by which the draft lowers the center back on purpose."""

SEED = 8559
"""Of the sample; the number of the standard of body measures, for want of a better one."""


INTRODUCTION = """<!-- Written by benchmarks/survey.py; run `make survey`. -->
# The skirt on every body of the survey

Bodies: [data/survey/ansur](../../data/survey/ansur/SOURCE.md) (U.S. Army personnel; not to be taken for
other populations), each at the navel as measured and at the natural waist as estimated. Default eases, counts
of darts chosen by the draft. Closures are measured by outside code: dense polylines of the finished outline,
with numpy.
"""

KEY = """- *As measured*: waist and hip are body plus the ease asked for. *With a cure*: the waist is larger
  than the hip allows, so that the hip ease was raised; the draft says it (`hip-ease-raised`).
- *Closure*: the largest of sewn waist, hip, side seam above the hip, front against back side seam, dart legs.
- *Side rise*: from the center to the side at the waist, what the center back is lowered on purpose left out.
- *No finding*: neither the draft nor a check has anything to look at."""

FIT = """Hip depth is foretold from stature, waist and hip by least squares on the same bodies (our own
regression; we know of none published for these two levels): constant + a stature + b waist + c hip, mm."""


@dataclass(frozen=True)
class Outcome:
    """What came of one body, mm. ``worst`` is the largest closure by outside code; ``rise`` the highest
    that a waist rises from center to side, what the center back was lowered on purpose left out."""

    id: str
    group: Group
    level: Level
    refused: str = ""
    facts: dict[str, Any] = field(default_factory=dict)
    flags: tuple[str, ...] = ()
    worst: float = 0.0
    rise: float = 0.0
    lowest_waist: float = 0.0
    widest_dart: float = 0.0
    seconds: float = 0.0


def outcome(job: tuple[Level, SurveyBody]) -> Outcome:
    """Draft the skirt for one body and measure it."""
    level, body = job
    measures = MeasureSet.from_mm(
        body.id,
        {"height": body.height, "waist_girth": body.waist_girth, "hip_girth": body.hip_girth}
        | {"hip_depth": body.hip_depth},
    )
    started = time.perf_counter()
    try:
        refuse_inconsistent(measures)
        run = draft("skirt", measures)
    except NotchbookError as error:
        return Outcome(body.id, body.group, level, error.code, dict(error.facts))
    seconds = time.perf_counter() - started
    girths = {girth.measure: girth.body + girth.ease for girth in ease_table(run)}
    closures = skirt_closures(run.pattern, girths["waist_girth"], girths["hip_girth"], body.hip_depth)
    found = [finding for finding in examine(run, cut=False).findings if finding.severity is not Severity.NOTE]
    pieces = [run.pattern.pieces[name] for name in ("skirt.front", "skirt.back")]
    return Outcome(
        body.id,
        body.group,
        level,
        flags=tuple(dict.fromkeys(finding.code for finding in found)),
        worst=max(abs(value) for value in closures.values()),
        rise=max(
            _rise(piece.outline, piece.name) - lowered
            for piece, lowered in zip(pieces, (0.0, LOWERED), strict=True)
        ),
        lowest_waist=min(_center_height(piece.outline, piece.name) for piece in pieces),
        widest_dart=max((_mouth(piece, intake) for piece in pieces for intake in piece.intakes), default=0.0),
        seconds=seconds,
    )


def _rise(outline: Iterable[Any], piece: str) -> float:
    """How far the waist is higher at the side than at the center, mm."""
    places = {edge.start: edge.path.start.y for edge in outline}
    return float(places[f"{piece}/waist_side"] - places[f"{piece}/waist_center"])


def _center_height(outline: Iterable[Any], piece: str) -> float:
    """How high the waist lies over the hip line at the center, mm."""
    return float(next(edge.path.start.y for edge in outline if edge.start == f"{piece}/waist_center"))


def _mouth(piece: Any, intake: Any) -> float:
    first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    return float(np.hypot(first.start.x - second.end.x, first.start.y - second.end.y))


def run(jobs: Sequence[tuple[Level, SurveyBody]], cores: int) -> list[Outcome]:
    """The outcomes in order, on so many cores."""
    if cores == 1:
        return [outcome(job) for job in jobs]
    with ProcessPoolExecutor(cores) as pool:
        return list(pool.map(outcome, jobs, chunksize=32))


def all_jobs() -> list[tuple[Level, SurveyBody]]:
    """Every row of the survey at both levels of the waist."""
    return [(level, body) for level in get_args(Level) for body in bodies(level)]


def sample(count: int, seed: int = SEED) -> list[tuple[Level, SurveyBody]]:
    """A part of the jobs, the same for the same seed."""
    return random.Random(seed).sample(all_jobs(), count)


def summary(outcomes: Sequence[Outcome]) -> dict[str, Any]:
    """The figures of one group at one level."""
    drafted = [item for item in outcomes if not item.refused]
    cured = [item for item in drafted if CURE in item.flags]
    flags = Counter(flag for item in drafted for flag in item.flags)
    return {
        "bodies": len(outcomes),
        "as_measured": len(drafted) - len(cured),
        "with_cure": len(cured),
        "refused": len(outcomes) - len(drafted),
        "without_any_flag": sum(not item.flags for item in drafted),
        "flags": dict(flags.most_common()),
        "refusals": dict(Counter(item.refused for item in outcomes if item.refused)),
        "worst_closure_mm": max((item.worst for item in drafted), default=0.0),
        "side_rise_mm": _percentiles([item.rise for item in drafted]),
        "waist_below_hip_line": [item.id for item in drafted if item.lowest_waist <= 0.0],
        "widest_dart_mm": max((item.widest_dart for item in drafted), default=0.0),
    }


def _percentiles(values: list[float]) -> list[float]:
    return [round(float(value), 2) for value in np.percentile(values, [5, 50, 95])] if values else []


@dataclass(frozen=True)
class Regression:
    """Hip depth foretold from stature, waist and hip by least squares, on the same bodies; mm."""

    group: Group
    level: Level
    constant: float
    stature: float
    waist: float
    hip: float
    deviation: float

    def residual(self, body: SurveyBody) -> float:
        """How far the body's hip depth is from what its other measures foretell, mm."""
        foretold = self.constant + self.stature * body.height
        return body.hip_depth - foretold - self.waist * body.waist_girth - self.hip * body.hip_girth


def regression(level: Level, group: Group) -> Regression:
    """Fit the regression on all rows of the group."""
    rows = list(bodies(level, (group,)))
    known = np.array([[1.0, row.height, row.waist_girth, row.hip_girth] for row in rows])
    wanted = np.array([row.hip_depth for row in rows])
    found, *_ = np.linalg.lstsq(known, wanted, rcond=None)
    deviation = float(np.std(wanted - known @ found, ddof=4))
    constant, stature, waist, hip = (float(value) for value in found)
    return Regression(group, level, constant, stature, waist, hip, deviation)


def report(outcomes: Sequence[Outcome], seconds: float, cores: int) -> dict[str, Any]:
    """Everything that is written: figures by group and level, regressions, refusals one by one."""
    by_id = {(level, body.id): body for level, body in all_jobs()}
    parts: list[dict[str, Any]] = []
    refusals: list[dict[str, Any]] = []
    for level in get_args(Level):
        for group in get_args(Group):
            chosen = [item for item in outcomes if (item.level, item.group) == (level, group)]
            foretold = regression(level, group)
            parts.append({"level": level, "group": group, **summary(chosen), "regression": asdict(foretold)})
            for item in (item for item in chosen if item.refused):
                body = by_id[level, item.id]
                residual = foretold.residual(body)
                refusals.append(
                    {
                        **asdict(body),
                        "level": level,
                        "code": item.refused,
                        "hip_depth_residual": round(residual, 1),
                        "hip_depth_deviations": round(residual / foretold.deviation, 2),
                    }
                )
    drafts = [item.seconds for item in outcomes if not item.refused]
    timing = {
        "cores": cores,
        "seconds": round(seconds, 1),
        "bodies_per_second": round(len(outcomes) / seconds, 1),
        "draft_ms": [round(1e3 * float(value), 2) for value in np.percentile(drafts, [5, 50, 95])],
    }
    version = definition("skirt").version
    return {"block": "skirt", "version": version, "parts": parts, "refusals": refusals, "timing": timing}


def page(found: dict[str, Any]) -> str:
    """The report as a page."""
    timing = found["timing"]
    lines = [
        INTRODUCTION,
        f"Version of the block: `skirt` {found['version']}.",
        "",
        "| waist at | group | bodies | as measured | with a cure | refused | no finding | worst closure mm |"
        " side rise 5/50/95 % mm | widest dart mm |",
        "|---|---|--:|--:|--:|--:|--:|--:|--:|--:|",
    ]
    for part in found["parts"]:
        total = part["bodies"]
        shares = [
            f"{part[key]} ({100 * part[key] / max(total, 1):.1f} %)"
            for key in ("as_measured", "with_cure", "refused", "without_any_flag")
        ]
        rise = " / ".join(f"{value:.1f}" for value in part["side_rise_mm"])
        lines.append(
            f"| {part['level']} | {part['group']} | {total} | {' | '.join(shares)} |"
            f" {part['worst_closure_mm']:.1e} | {rise} | {part['widest_dart_mm']:.1f} |"
        )
    lines += [
        "",
        KEY,
        "",
        "## What is to be looked at, by code",
        "",
        "| waist at | group | findings |",
        "|---|---|---|",
    ]
    for part in found["parts"]:
        flags = ", ".join(
            f"{code} {count} ({100 * count / part['bodies']:.1f} %)" for code, count in part["flags"].items()
        )
        lines.append(f"| {part['level']} | {part['group']} | {flags or 'none'} |")
    lines += ["", *_low_waist_lines(found), *_refusal_lines(found), "", "## Time", ""]
    low, middle, high = timing["draft_ms"]
    lines += [
        f"{timing['seconds']} s on {timing['cores']} cores: {timing['bodies_per_second']} bodies a second,"
        f" with checks and outside measuring; a draft takes {low} / {middle} / {high} ms (5/50/95 %)."
        " The machine is shared with others.",
    ]
    return "\n".join(lines) + "\n"


def _low_waist_lines(found: dict[str, Any]) -> list[str]:
    """The bodies whose waist is drawn below the hip line at the center: a draft that nobody should cut."""
    low = [f"{name} ({part['level']})" for part in found["parts"] for name in part["waist_below_hip_line"]]
    if not low:
        return []
    words = (
        f"The waist at the center lies below the hip line, for the hip depth is so short: {', '.join(low)}."
    )
    return ["## Drafts that nobody should cut", "", words, ""]


def _refusal_lines(found: dict[str, Any]) -> list[str]:
    """Each refusal with the pair that disagrees, and how far its hip depth is from what is usual."""
    lines = [
        "## Refusals",
        "",
        FIT,
        "",
        "| waist at | group | constant | a | b | c | standard deviation mm |",
        "|---|---|--:|--:|--:|--:|--:|",
    ]
    for part in found["parts"]:
        fit = part["regression"]
        figures = " | ".join(f"{fit[key]:.3f}" for key in ("constant", "stature", "waist", "hip"))
        lines.append(f"| {part['level']} | {part['group']} | {figures} | {fit['deviation']:.1f} |")
    lines.append("")
    if not found["refusals"]:
        return [*lines, "No body was refused."]
    lines += [
        "| body | waist at | code | waist | hip | hip depth | from the regression |",
        "|---|---|---|--:|--:|--:|--:|",
    ]
    lines += [
        f"| {item['id']} | {item['level']} | {item['code']} "
        f"| {item['waist_girth']:.0f} | {item['hip_girth']:.0f} |"
        f" {item['hip_depth']:.0f} | {item['hip_depth_residual']:+.0f} mm"
        f" ({item['hip_depth_deviations']:+.1f} standard deviations) |"
        for item in found["refusals"]
    ]
    return lines


def main(words: list[str]) -> int:
    """Run the survey and write or print it."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--sample", type=int, default=0, help="draft so many bodies only, and write nothing")
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    chosen = parser.parse_args(words)
    jobs = sample(chosen.sample) if chosen.sample else all_jobs()
    started = time.perf_counter()
    outcomes = run(jobs, chosen.cores)
    found = report(outcomes, time.perf_counter() - started, chosen.cores)
    print(page(found))
    if not chosen.sample:
        folder = ROOT / "docs" / "survey"
        folder.mkdir(parents=True, exist_ok=True)
        (folder / "skirt.md").write_text(page(found), encoding="utf-8")
        (folder / "skirt.json").write_text(json.dumps(found, indent=1) + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
