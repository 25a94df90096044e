"""How fast the house works: medians with their spread on fixed jobs.

Run by `make bench`; writes docs/bench.md. `--no-page` leaves the browser out, `--print` writes nothing.
"""

from __future__ import annotations

import argparse
import json
import os
import platform
import statistics
import sys
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks")]

import bench_geometry
import bench_jacket
import bench_lower
import bench_measures
import bench_recipes
import bench_upper
from make_bodies import write
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.app.made_to_measure import GarmentAsked, make_to_measure
from notchbook.body import MeasureSet, set_from_data
from notchbook.finish import Cloth, finish, production_table
from notchbook.output.paper_info import PaperInfo
from notchbook.output.registry import output
from notchbook.recipe import Recipe, change_step, recipe_from_json, replay
from timing import ROUNDS, Figure, Row, timed, timed_command

GOLDEN = ROOT / "tests" / "golden"


def yoke_skirt() -> tuple[Recipe, MeasureSet]:
    """The recipe of nine steps that the project keeps for ever, and its measures."""
    recipe = recipe_from_json((GOLDEN / "yoke_skirt-0.1.recipe.json").read_text(encoding="utf-8"))
    return recipe, set_from_data(json.loads((GOLDEN / "yoke_skirt-0.1.measures.json").read_text("utf-8")))


def core_figures() -> Iterator[Figure]:
    """Draft, replay, finish, checks, print."""
    recipe, measures = yoke_skirt()
    skirt = draft("skirt", measures)
    whole = replay(recipe, measures)
    house, cloth = production_table(), Cloth()
    longer = change_step(recipe, "change_length-1", {"amount": "7 cm"}, base=measures)
    pieces = finish(skirt.pattern, house, cloth)
    info = PaperInfo("B-1", "Bench")
    yield timed("draft of the skirt block", lambda: draft("skirt", measures))
    yield timed("replay of the yoke skirt (9 steps), whole", lambda: replay(recipe, measures))
    yield timed("replay of the yoke skirt after a change of step 5", lambda: replay(longer, measures, whole))
    yield timed("cut-ready: skirt block", lambda: finish(skirt.pattern, house, cloth))
    yield timed("cut-ready: yoke skirt", lambda: finish(whole.pattern, house, cloth))
    yield timed("checks while shaping: skirt block", lambda: examine(skirt, cut=False))
    yield timed("all checks: skirt block", lambda: examine(skirt))
    yield timed("all checks: yoke skirt", lambda: examine(whole))
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "pattern.pdf"
        yield timed(
            "tiled PDF of the skirt block", lambda: output(".pdf").write(pieces, info, path, "both"), 7
        )


def many_bodies_figures(count: int = 400) -> Iterator[Figure]:
    """Made to measure, bodies a second, with each number of cores up to two."""
    with tempfile.TemporaryDirectory() as folder:
        path, report = Path(folder) / "bodies.csv", Path(folder) / "report.csv"
        write("natural", path)
        lines = path.read_text(encoding="utf-8").splitlines(keepends=True)
        path.write_text("".join(lines[: count + 1]), encoding="utf-8")
        for cores in range(1, min(2, os.cpu_count() or 1) + 1):
            rates = []
            for _ in range(3):
                made = make_to_measure(GarmentAsked("skirt"), path, report, cores=cores)
                rates.append(made.bodies / made.seconds)
            job = f"made to measure with checks, {count} bodies, {cores} core{'s' * (cores > 1)}"
            yield Figure(job, min(rates), statistics.median(rates), max(rates), "bodies/s")


def page_lines() -> list[str]:
    """The workroom in a real browser, or why it was not measured."""
    try:
        from bench_workroom import bench_workroom

        found = bench_workroom(60)
    except (ImportError, OSError, RuntimeError) as error:
        # The words of an error may name places of this machine, which have no business in the page.
        print(f"The workroom was not measured: {error}", file=sys.stderr)
        return [f"Not measured: {type(error).__name__}."]
    return [
        f"First page {found['open_ms']:.0f} ms; from a typed measure to the redrawn sheet p50 "
        f"{found['edit_p50_ms']:.0f} ms, p95 {found['edit_p95_ms']:.0f} ms ({found['edits']:.0f} edits)."
    ]


def machine() -> str:
    """The kind of machine, in words."""
    return (
        f"{_processor()}, {os.cpu_count()} cores, {platform.system()}, Python {platform.python_version()}."
        " The machine is shared with others, so that the least figures say more than the most."
    )


def load() -> str:
    """How busy the machine has been for a minute; nothing is known of some systems."""
    return f"{os.getloadavg()[0]:.1f}" if hasattr(os, "getloadavg") else "not known"


def _processor() -> str:
    info = Path("/proc/cpuinfo")
    if info.is_file():
        for line in info.read_text(encoding="utf-8").splitlines():
            if line.startswith("model name"):
                return line.partition(":")[2].strip()
    return platform.processor() or platform.machine()


@dataclass(frozen=True)
class Figures:
    """What was timed, by chapter."""

    core: Sequence[Figure]
    recipes: Sequence[Figure]
    jacket: Sequence[Figure]
    upper: Sequence[Figure]
    lower: Sequence[Figure]
    measures: Sequence[Figure]


def page(timed_jobs: Figures, browser: Sequence[str], before: str) -> str:
    """The report as a page; ``before`` is the load when the bench began."""
    geometry, outside = bench_geometry.rows(), bench_measures.rows()
    lines = [
        "<!-- Written by benchmarks/run.py; run `make bench`. -->",
        "# How fast the house works",
        "",
        f"{machine()} Its load was {before} when the bench began and {load()} at the end.",
        "",
        *_figure_table(timed_jobs.core),
        "",
        f"Each job is done {ROUNDS} times after once for warming up (the PDF 7, made to measure 3 times).",
        "",
        "## A style of twenty steps",
        "",
        *_figure_table(timed_jobs.recipes),
        "",
        bench_recipes.KEY,
        "",
        *_row_table(bench_recipes.rows()),
        "",
        "## The tailored jacket",
        "",
        *_figure_table(timed_jobs.jacket),
        "",
        bench_jacket.KEY,
        "",
        *_row_table(bench_jacket.rows()),
        "",
        "## Bodice and sleeve",
        "",
        *_figure_table(timed_jobs.upper),
        "",
        bench_upper.KEY,
        "",
        *_row_table(bench_upper.rows()),
        "",
        "## Trousers, skirts and stretch blocks",
        "",
        *_figure_table(timed_jobs.lower),
        "",
        bench_lower.KEY,
        "",
        "## Geometry beside general-purpose libraries",
        "",
        f"At an equal accuracy of {bench_geometry.ACCURACY_MM:g} mm; medians.",
        "",
        *_row_table(geometry),
        "",
        "## Measures",
        "",
        *_figure_table(timed_jobs.measures),
        "",
        bench_measures.KEY,
        "",
        "## Measures beside general-purpose libraries",
        "",
        bench_measures.ROWS_KEY,
        "",
        *_row_table(outside),
    ]
    return "\n".join([*lines, "", "## The workroom in Chromium", "", *browser]) + "\n"


def _figure_table(figures: Sequence[Figure]) -> list[str]:
    lines = ["| job | least | median | most | unit |", "|---|--:|--:|--:|---|"]
    return lines + [
        f"| {item.job} | {_short(item.least)} | {_short(item.median)} | {_short(item.most)} | {item.unit} |"
        for item in figures
    ]


def _short(figure: float) -> str:
    return f"{figure:.1f}" if figure >= 1.0 else f"{figure:.3f}"


def _row_table(rows: Sequence[Row]) -> list[str]:
    return ["| job | by | ms |", "|---|---|--:|", *(f"| {job} | {who} | {ms:.4f} |" for job, who, ms in rows)]


def main(words: list[str]) -> int:
    """Measure, print, and write the page."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--no-page", action="store_true", help="leave the browser out")
    parser.add_argument("--print", action="store_true", help="print only, write nothing")
    chosen = parser.parse_args(words)
    before = load()
    figures = [
        *core_figures(),
        timed_command("notchbook --help, a new process", ["--help"]),
        *many_bodies_figures(),
    ]
    recipes, jacket = list(bench_recipes.figures()), list(bench_jacket.figures())
    upper, lower = list(bench_upper.figures()), list(bench_lower.figures())
    measures = list(bench_measures.figures())
    browser = ["Not measured: left out."] if chosen.no_page else page_lines()
    text = page(Figures(figures, recipes, jacket, upper, lower, measures), browser, before)
    print(text)
    if not chosen.print:
        (ROOT / "docs" / "bench.md").write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
