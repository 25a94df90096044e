"""Recipes at random, each written on one body and replayed on others: do they reach their end?

Run by `make survey`; writes docs/survey/recipes.md and docs/survey/recipes.json. `--count N` writes so many
recipes and prints only, `--first` begins at another seed, `--keep FOLDER` keeps each fault there as a recipe.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
import time
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Final

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks"), str(ROOT / "tests")]

from random_recipes.trials import Fault, Outcome, outcome
from survey_bodice import told
from survey_recipes_page import page, summary

COUNT: Final = 660
"""Recipes of the whole survey: sixty of each garment, each written on one body and run on three."""


def run(seeds: Sequence[int], cores: int) -> list[Outcome]:
    """The outcomes in order, on so many cores."""
    if cores == 1:
        return [outcome(seed) for seed in seeds]
    tell, found = told(len(seeds)), []
    with ProcessPoolExecutor(cores) as pool:
        for one in pool.map(outcome, seeds, chunksize=4):
            found.append(one)
            tell(len(found))
    return found


def keep(faults: Sequence[Fault], folder: Path) -> None:
    """Write each fault as a file that a test can run again."""
    folder.mkdir(parents=True, exist_ok=True)
    for number, fault in enumerate(faults):
        data = {"told": fault.told, "recipe": fault.recipe, "measures": fault.measures}
        path = folder / f"seed_{fault.seed}_{number}.json"
        path.write_text(json.dumps(data, indent=1, sort_keys=True) + "\n", encoding="utf-8")


def main(words: list[str]) -> int:
    """Run the survey and write or print it."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--count", type=int, default=0, help="write so many recipes, and no page")
    parser.add_argument("--first", type=int, default=0, help="the first seed")
    parser.add_argument("--keep", type=Path, help="a folder in which each fault is kept")
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    chosen = parser.parse_args(words)
    started = time.perf_counter()
    seeds = range(chosen.first, chosen.first + (chosen.count or COUNT))
    outcomes = run(seeds, chosen.cores)
    found = summary(outcomes, time.perf_counter() - started, chosen.cores)
    print(page(found))
    if chosen.keep:
        keep([fault for one in outcomes for fault in one.faults], chosen.keep)
    if not chosen.count:
        folder = ROOT / "docs" / "survey"
        (folder / "recipes.md").write_text(page(found), encoding="utf-8")
        (folder / "recipes.json").write_text(json.dumps(found, indent=1) + "\n", encoding="utf-8")
    return 1 if found["faults"] else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
