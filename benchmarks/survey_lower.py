"""Trousers, skirts and stretch blocks on every body of the survey, on tables and random bodies.

Run by `make survey`; writes docs/survey/lower.md and docs/survey/lower.json. `--sample N` takes a seeded
part and prints only, `--blocks` names what is drafted.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any, Final, get_args

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks"), str(ROOT / "tests")]

from lower_judged import JUDGES
from lower_tables import lower_extremes, lower_tables
from make_bodies import Group, Level
from make_lower_bodies import LOWER_KEYS, STRETCH_KEYS, LowerMode, lower_body, stretch_body
from make_upper_bodies import SEED
from notchbook.app.curing import draft_taking
from notchbook.app.offered_cure import OfferedCure
from notchbook.body import MeasureSet
from notchbook.errors import NotchbookError
from notchbook.pattern import Severity
from notchbook.recipe import Replay, definition
from support.asked_of_lower import gave_way
from survey_bodice import Outcome, facts_of, looked_over, summary, told
from survey_lower_page import page
from survey_rows import rows
from upper_random import random_bodies

RANDOM: Final = 5000
FEW_RANDOM: Final = 300
"""Bodies of each kind for each block: in the whole survey, and beside a sample at most."""

KINDS_OF_RANDOM: Final = {"plausible": 1.0, "odd": 0.3, "implausible": 1.0}
"""Which share of that number is drafted of each kind."""

MOST_CURES: Final = 3
"""Cures taken one after another before a body counts as refused."""

CROTCH_TOTAL: Final = 1.0
"""mm by which the crotch may miss measure and ease and still count as drafted as measured (own goal)."""


@dataclass(frozen=True)
class Drafted:
    """One line of work: a block with its settings, what its bodies hold, the levels and ways in which they
    were made; ``usual`` are the lines that are checked too, and drafted for tables and random bodies."""

    name: str
    block: str
    settings: Mapping[str, Any]
    keys: tuple[str, ...] = LOWER_KEYS
    modes: tuple[LowerMode, ...] = ("measured",)
    levels: tuple[Level, ...] = get_args(Level)
    usual: bool = True


FABRICS: Final = {"25/25": ("25 %", "25 %"), "50/50": ("50 %", "50 %"), "100/60": ("100 %", "60 %")}
"""Stretch across and along of three cloths."""

USUAL_FABRIC: Final = "50/50"


def _stretch_lines() -> Iterator[Drafted]:
    for block in ("stretch_torso", "bodysuit", "leggings"):
        for name, (across, along) in FABRICS.items():
            settings = {"across": across, "along": along}
            line = Drafted(f"{block} {name}", block, settings, STRETCH_KEYS, levels=("natural",))
            yield replace(line, usual=name == USUAL_FABRIC)


LINES: Final[tuple[Drafted, ...]] = (
    Drafted("trousers", "trousers", {}),
    Drafted("trousers, other readings", "trousers", {}, modes=("split", "estimated"), levels=("natural",)),
    Drafted("skirt", "skirt", {}),
    Drafted("circle skirt, half", "circle_skirt", {}),
    Drafted("gored skirt", "gored_skirt", {}),
    *_stretch_lines(),
)

LINE: Final = {line.name: line for line in LINES}


@dataclass(frozen=True)
class Job:
    """One body to draft for: ``part`` says to which line of the report it belongs."""

    line: str
    part: str
    name: str
    make: tuple[Any, ...]

    @property
    def is_checked(self) -> bool:
        """Whether the checks are run too; random bodies are judged by outside code alone."""
        return LINE[self.line].usual and "random" not in self.part


@dataclass(frozen=True)
class LowerOutcome(Outcome):
    """``faults``: what a patternmaker would send back though every length agrees."""

    faults: tuple[str, ...] = ()


def measures_of(job: Job) -> MeasureSet:
    """The body of a job."""
    kind, *rest = job.make
    if kind == "survey":
        level, mode, group, place = rest
        make = stretch_body if LINE[job.line].keys == STRETCH_KEYS else lower_body
        return make(rows(group)[place], level, mode, group).measures
    found: MeasureSet = rest[0]
    return found


def drafted(line: Drafted, measures: MeasureSet) -> tuple[Replay, tuple[OfferedCure, ...]]:
    """The draft, with the first cure that a refusal offers, as often as one is offered."""
    words: list[str] = []
    while True:
        try:
            return draft_taking(line.block, measures, line.settings, words)
        except NotchbookError as error:
            offered = error.facts.get("offered")
            if not isinstance(offered, tuple) or not offered or len(words) == MOST_CURES:
                raise
            words.append(offered[0].word)


def outcome(job: Job) -> LowerOutcome:
    """Draft a block for one body, with the cure that is offered where it is needed, and measure."""
    line = LINE[job.line]
    try:
        measures = measures_of(job)
        started = time.perf_counter()
        run, taken = drafted(line, measures)
    except NotchbookError as error:
        return LowerOutcome(job.part, job.name, error.code, facts_of(error))
    seconds = time.perf_counter() - started
    findings = looked_over(run).findings if job.is_checked else run.notes
    found = [one.code for one in findings if one.severity is not Severity.NOTE]
    judged = JUDGES[line.block](run)
    return LowerOutcome(
        job.part,
        job.name,
        cure=", ".join(f"{one.parameter} {one.value}" for one in taken),
        flags=tuple(dict.fromkeys(found)),
        open=judged.open,
        replaced=_not_as_asked(run),
        worst=judged.worst,
        figures={name: round(value, 3) for name, value in judged.figures.items()},
        seconds=seconds,
        faults=judged.faults,
    )


def _not_as_asked(run: Replay) -> tuple[str, ...]:
    """What the draft promises otherwise than it was asked for, and by how much, mm."""
    return tuple(f"{key} {by:+.0f}" for key, by in gave_way(run, CROTCH_TOTAL).items())


def survey_jobs(lines: Sequence[Drafted] = LINES) -> list[Job]:
    """Every row of the survey, at the waists and in the ways of each line."""
    return [
        Job(
            line.name,
            f"{line.name}: {group}, {level}, {mode}",
            f"{group[0]}{row['row']:.0f}",
            ("survey", level, mode, group, place),
        )
        for line in lines
        for group in get_args(Group)
        for level in line.levels
        for mode in line.modes
        for place, row in enumerate(rows(group))
    ]


def other_jobs(lines: Sequence[Drafted] = LINES, count: int = RANDOM) -> list[Job]:
    """Sizes of tables, bodies at the edges, and so many random bodies of each kind, for each line."""
    return [
        Job(line.name, f"{line.name}: {part}", name, ("set", measures))
        for line in lines
        if line.usual and "measured" in line.modes
        for part, name, measures in _other_bodies(line.keys, count)
    ]


def _other_bodies(keys: tuple[str, ...], count: int) -> Iterator[tuple[str, str, MeasureSet]]:
    """Line of the report, name and measures."""
    for body in lower_tables(keys):
        yield f"tables, {body.measures.population or 'children'}", body.name, body.measures
    yield from (("at the edges", body.label, body.measures) for body in lower_extremes(keys))
    for kind, share in KINDS_OF_RANDOM.items():
        for number, made in enumerate(random_bodies(kind, round(share * count), SEED, keys)):
            yield f"random, {kind}", f"{kind[0]}{number}", made


def run_jobs(jobs: Sequence[Job], cores: int) -> list[LowerOutcome]:
    """The outcomes in order, on so many cores."""
    tell = told(len(jobs))
    if cores == 1:
        return [outcome(job) for job in jobs]
    found = []
    with ProcessPoolExecutor(cores) as pool:
        for one in pool.map(outcome, jobs, chunksize=16):
            found.append(one)
            tell(len(found))
    return found


def sample(count: int, lines: Sequence[Drafted] = LINES, seed: int = SEED) -> list[Job]:
    """A part of the survey's jobs, the same for the same seed, as many of each line."""
    found: list[Job] = []
    for line in lines:
        jobs = survey_jobs([line])
        found += random.Random(seed).sample(jobs, min(len(jobs), -(-count // len(lines))))
    return found


def line_summary(part: str, outcomes: Sequence[LowerOutcome]) -> dict[str, Any]:
    """The figures of one line of the report."""
    drafts = [one for one in outcomes if not one.refused]
    faults = Counter(fault.rstrip("-+.0123456789 ") for one in drafts for fault in one.faults)
    closed = [one for one in drafts if not one.open and not one.cure]
    return {
        **summary(part, outcomes),
        "exactly_as_measured": sum(not one.replaced for one in closed),
        "well_shaped": sum(not one.faults for one in drafts if not one.open),
        "faults": dict(faults.most_common()),
    }


def report(
    outcomes: Sequence[LowerOutcome], seconds: float, cores: int, part: tuple[int, int] | None = None
) -> dict[str, Any]:
    """Everything that is written; ``part`` is how many bodies were drafted and how many there are, where not
    all were."""
    parts = list(dict.fromkeys(one.part for one in outcomes))
    blocks = sorted({LINE[part.partition(":")[0]].block for part in parts if part.partition(":")[0] in LINE})
    shown = [one for one in outcomes if (one.refused or one.open) and "random" not in one.part]
    return {
        "parts": [line_summary(part, [one for one in outcomes if one.part == part]) for part in parts],
        "refused_or_open": [
            {key: value for key, value in asdict(one).items() if key != "figures" and value} for one in shown
        ],
        "seconds": round(seconds, 1),
        "cores": cores,
        "part": part,
        "versions": {block: definition(block).version for block in blocks},
    }


def _chosen(words: list[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--sample", type=int, default=0, help="draft so many bodies only, and write nothing")
    parser.add_argument("--others", action="store_true", help="with --sample: tables and random bodies too")
    parser.add_argument(
        "--write", action="store_true", help="with --sample: write, and say that it is a part"
    )
    parser.add_argument("--blocks", nargs="+", choices=sorted(JUDGES), default=sorted(JUDGES))
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    return parser.parse_args(words)


def main(words: list[str]) -> int:
    """Run the survey and write or print it."""
    chosen = _chosen(words)
    lines = [line for line in LINES if line.block in chosen.blocks]
    jobs = sample(chosen.sample, lines) if chosen.sample else survey_jobs(lines)
    if not chosen.sample or chosen.others:
        jobs += other_jobs(lines, min(chosen.sample, FEW_RANDOM) if chosen.sample else RANDOM)
    started = time.perf_counter()
    outcomes = run_jobs(sorted(jobs, key=lambda job: job.part), chosen.cores)
    part = (chosen.sample, len(survey_jobs(lines))) if chosen.sample else None
    found = report(outcomes, time.perf_counter() - started, chosen.cores, part)
    print(page(found))
    if chosen.write or not chosen.sample:
        folder = ROOT / "docs" / "survey"
        folder.mkdir(parents=True, exist_ok=True)
        (folder / "lower.md").write_text(page(found), encoding="utf-8")
        (folder / "lower.json").write_text(json.dumps(found, indent=1) + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
