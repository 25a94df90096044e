"""Bodice and sleeve on every body of the survey, in three ways at two waists, on tables and random bodies.

Run by `make survey`; writes docs/survey/bodice.md and docs/survey/bodice.json. `--sample N` takes a seeded
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
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import Any, Final, get_args

import numpy as np

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks"), str(ROOT / "tests")]

from make_bodies import Group, Level
from make_upper_bodies import MODES, SEED, upper_body
from notchbook.app.curing import draft_taking
from notchbook.app.examining import examine_subject
from notchbook.body import MeasureSet
from notchbook.checks import Report, Subject
from notchbook.errors import NotchbookError
from notchbook.pattern import Severity, pattern_to_data
from notchbook.recipe import Replay
from support.bodice_judge import UpperJudge, closures
from survey_bodice_page import page
from survey_rows import rows
from upper_figures import figures
from upper_random import random_bodies
from upper_tables import extreme_bodies, table_bodies

SETTINGS: Final[dict[str, dict[str, str]]] = {"bodice": {}, "sleeve": {"fabric": "wool_dress"}}
"""The sleeve's fabric is asked for; the rest is as the blocks have it."""

CURES: Final = (
    "sleeve-arm-too-full",
    "sleeve-arm-too-thin",
    "sleeve-arm-beyond-armhole",
    "sleeve-cap-leaves-armhole",
)
"""The refusals and the finding whose cure is taken where it is offered: the armhole is lowered, or the sleeve
widened, by the solved amount."""

RANDOM: Final = 5000
FEW_RANDOM: Final = 300
"""Bodies of each kind: in the whole survey, and beside a sample at most."""


@dataclass(frozen=True)
class Job:
    """One body to draft for: ``part`` says to which line of the report it belongs."""

    part: str
    name: str
    make: tuple[Any, ...]
    block: str = "sleeve"


@dataclass(frozen=True)
class Outcome:
    """What came of one body. ``open`` names what does not agree by outside code, ``cure`` what was changed on
    offer, ``replaced`` the measures that the draft did not take as they were given."""

    part: str
    name: str
    refused: str = ""
    facts: str = ""
    cure: str = ""
    flags: tuple[str, ...] = ()
    open: tuple[str, ...] = ()
    replaced: tuple[str, ...] = ()
    worst: float = 0.0
    figures: dict[str, float] = field(default_factory=dict)
    seconds: float = 0.0


def measures_of(job: Job) -> MeasureSet:
    """The body of a job."""
    kind, *rest = job.make
    if kind == "survey":
        level, mode, group, place = rest
        return upper_body(rows(group)[place], level, mode, group).measures
    found: MeasureSet = rest[0]
    return found


def outcome(job: Job) -> Outcome:
    """Draft bodice and sleeve for one body, with the cure that is offered where it is needed, and measure."""
    try:
        measures = measures_of(job)
        started = time.perf_counter()
        run, taken = draft_taking(job.block, measures, SETTINGS[job.block], CURES)
    except NotchbookError as error:
        return Outcome(job.part, job.name, error.code, facts_of(error))
    seconds = time.perf_counter() - started
    found = [one.code for one in looked_over(run).findings if one.severity is not Severity.NOTE]
    data = pattern_to_data(run.pattern)
    judge, wanted = UpperJudge(data), wanted_of(run)
    judged = closures(data, wanted)
    missed = [f"{one.name} {one.miss:+.2f}" for one in judged if not one.holds]
    missed += [f"{piece} crosses itself" for piece in judge.pieces if not judge.polygon(piece).is_valid]
    return Outcome(
        job.part,
        job.name,
        cure=", ".join(f"{one.parameter} {one.value}" for one in taken),
        flags=tuple(dict.fromkeys(found)),
        open=tuple(missed),
        replaced=replaced(run),
        worst=max(abs(one.miss) for one in judged if one.within == 0.1),
        figures={name: round(value, 3) for name, value in figures(judge).items()},
        seconds=seconds,
    )


def looked_over(run: Replay) -> Report:
    """The findings of draft and checks, but for what is said of every estimate: it takes as long as all the
    others and says nothing of the draft."""
    measures = run.measures
    body = {key: measures.value(key) for key in measures.measure_keys()}
    subject = Subject(run.pattern, body, run.expectations, population=measures.population)
    return examine_subject(subject, run, cut=False)


def facts_of(error: NotchbookError) -> str:
    """The figures and words of a refusal in one line."""
    return ", ".join(
        f"{key} {value:.1f}" if isinstance(value, float) else f"{key} {value}"
        for key, value in error.facts.items()
        if isinstance(value, float | int | str)
    )


def wanted_of(run: Replay) -> dict[str, float]:
    """What each girth and length was to come to, mm with its ease, by the key of its measure."""
    return {promise.measure: promise.wanted for promise in run.expectations if promise.measure}


def replaced(run: Replay) -> tuple[str, ...]:
    """The measures that the draft did not take as they were given, with how far it went, mm."""
    off = {
        promise.measure: promise.body - run.measures.value(promise.measure)
        for promise in run.expectations
        if promise.measure and run.measures.find(promise.measure) is not None
    }
    return tuple(f"{key} {by:+.0f}" for key, by in off.items() if abs(by) > 0.05)


def survey_jobs() -> list[Job]:
    """Every row of the survey at both waists in every way. Men have nothing to scatter."""
    return [
        Job(f"{group}, {level}, {mode}", f"{group[0]}{row['row']:.0f}", ("survey", level, mode, group, place))
        for group in get_args(Group)
        for level in get_args(Level)
        for mode in MODES
        if (group, mode) != ("men", "scatter")
        for place, row in enumerate(rows(group))
    ]


def other_jobs(count: int = RANDOM) -> list[Job]:
    """Sizes of tables, bodies at the edges, and so many random bodies of each kind."""
    jobs = [Job(f"table: {body.table}", body.label, ("set", body.measures)) for body in table_bodies()]
    jobs += [Job("at the edges", body.label, ("set", body.measures)) for body in extreme_bodies()]
    for kind in ("plausible", "implausible"):
        made = enumerate(random_bodies(kind, count, SEED))
        jobs += [Job(f"random, {kind}", f"{kind[0]}{number}", ("set", body)) for number, body in made]
    return jobs


def run_jobs(jobs: Sequence[Job], cores: int, tell: Callable[[int], None] = lambda _: None) -> list[Outcome]:
    """The outcomes in order, on so many cores."""
    if cores == 1:
        return [outcome(job) for job in jobs]
    found = []
    with ProcessPoolExecutor(cores) as pool:
        for one in pool.map(outcome, jobs, chunksize=16):
            found.append(one)
            tell(len(found))
    return found


def sample(count: int, seed: int = SEED) -> list[Job]:
    """A part of the survey's jobs, the same for the same seed."""
    return random.Random(seed).sample(survey_jobs(), count)


def summary(part: str, outcomes: Sequence[Outcome]) -> dict[str, Any]:
    """The figures of one line of the report."""
    drafts = [one for one in outcomes if not one.refused]
    closed = [one for one in drafts if not one.open]
    flags = Counter(flag for one in drafts for flag in one.flags)
    return {
        "part": part,
        "bodies": len(outcomes),
        "as_measured": sum(not one.cure for one in closed),
        "with_cure": sum(bool(one.cure) for one in closed),
        "open": len(drafts) - len(closed),
        "refused": len(outcomes) - len(drafts),
        "unflagged": sum(not one.flags and not one.cure for one in closed),
        "replaced": dict(Counter(_what(word) for one in drafts for word in one.replaced).most_common()),
        "worst_length_mm": max((one.worst for one in drafts), default=0.0),
        "flags": dict(flags.most_common()),
        "refusals": dict(Counter(one.refused for one in outcomes if one.refused).most_common()),
        "opens": dict(Counter(_what(miss) for one in drafts for miss in one.open).most_common()),
        "figures": {
            name: _percentiles([one.figures[name] for one in drafts if name in one.figures])
            for name in dict.fromkeys(name for one in drafts for name in one.figures)
        },
        "draft_ms": _percentiles([1e3 * one.seconds for one in drafts]),
    }


def _what(miss: str) -> str:
    return miss.rpartition(" ")[0] if miss[-1].isdigit() else miss


def _percentiles(values: list[float]) -> list[float]:
    return [round(float(value), 3) for value in np.percentile(values, [5, 50, 95])] if values else []


def report(
    outcomes: Sequence[Outcome], seconds: float, cores: int, part: tuple[int, int] | None = None
) -> dict[str, Any]:
    """Everything that is written; ``part`` is how many bodies of the survey were drafted and how many there
    are, where not all were."""
    parts = list(dict.fromkeys(one.part for one in outcomes))
    shown = [one for one in outcomes if (one.refused or one.open) and not one.part.startswith("random")]
    return {
        "blocks": ["bodice", "sleeve"],
        "parts": [summary(part, [one for one in outcomes if one.part == part]) for part in parts],
        "refused_or_open": [
            {key: value for key, value in asdict(one).items() if key != "figures" and value} for one in shown
        ],
        "seconds": round(seconds, 1),
        "cores": cores,
        "part": part,
    }


def told(total: int, every: int = 500) -> Callable[[int], None]:
    """Says on the error stream how many bodies are done."""

    def tell(done: int) -> None:
        if done % every == 0:
            print(f"{done} of {total} bodies", file=sys.stderr, flush=True)

    return tell


def main(words: list[str]) -> int:
    """Run the survey and write or print it."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--sample", type=int, default=0, help="draft so many bodies only, and write nothing")
    parser.add_argument("--others", action="store_true", help="with --sample: tables and random bodies too")
    parser.add_argument(
        "--write", action="store_true", help="with --sample: write, and say that it is a part"
    )
    parser.add_argument("--block", choices=SETTINGS, default="sleeve", help="with --sample: what is drafted")
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    chosen = parser.parse_args(words)
    jobs = sample(chosen.sample) if chosen.sample else survey_jobs()
    if not chosen.sample or chosen.others:
        jobs += other_jobs(min(chosen.sample, FEW_RANDOM) if chosen.sample else RANDOM)
    if chosen.sample:
        jobs = [replace(job, block=chosen.block) for job in jobs]
    started = time.perf_counter()
    outcomes = run_jobs(sorted(jobs, key=lambda job: job.part), chosen.cores, told(len(jobs)))
    part = (chosen.sample, len(survey_jobs())) if chosen.sample else None
    found = report(outcomes, time.perf_counter() - started, chosen.cores, part)
    print(page(found))
    if chosen.write or not chosen.sample:
        folder = ROOT / "docs" / "survey"
        folder.mkdir(parents=True, exist_ok=True)
        (folder / "bodice.md").write_text(page(found), encoding="utf-8")
        (folder / "bodice.json").write_text(json.dumps(found, indent=1) + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
