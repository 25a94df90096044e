"""The page of the survey of recipes at random."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from random_recipes.trials import Outcome
from random_recipes.writing import FEWEST, MOST, PROPOSERS

Summary = dict[str, Any]

HEAD: Final = f"""<!-- Written by benchmarks/survey_recipes.py; run `make survey`. -->
# Recipes at random

Each recipe is written as a hand would write it, from the names that stand in the pattern: a step is chosen
by chance among all steps that are no blocks, its edges, darts and places among those that fit it, its amounts
within what is usual. A step that is refused on the body on which the recipe is written is counted and left
out, as a hand would read the message and do something else. So {FEWEST} to {MOST} steps come together, the
blocks among them. The recipe is then run on three other bodies of the same population, unseen and unmended.
Half the recipes are written on a size of a table, half on a body of the survey in data/survey/ansur; the
other bodies are of the survey. Two of three are women's.

An outline that crosses itself is found by shapely on points reckoned with numpy; it counts as told when the
checks say so of that piece. A fault is a traceback, or a crossing that is not told.
"""


def summary(outcomes: Sequence[Outcome], seconds: float, cores: int) -> Summary:
    """The figures of the page."""
    begun = [one for one in outcomes if one.steps]
    ends = [end for one in begun for end in one.ends]
    asked = [step for one in begun for step in one.asked]
    return {
        "recipes": len(begun),
        "refused_bodies": len(outcomes) - len(begun),
        "runs": len(ends) + len(begun),
        "replays": len(ends),
        "reached": ends.count(""),
        "steps": dict(sorted(Counter(one.steps for one in begun).items())),
        "garments": {name: _of_garment(begun, name) for name in dict.fromkeys(o.garment for o in begun)},
        "operations": {name: _of_operation(name, asked) for name in PROPOSERS},
        "stops": dict(Counter(end for end in ends if end).most_common()),
        "faults": [[fault.seed, fault.told] for one in outcomes for fault in one.faults],
        "seconds": round(seconds, 1),
        "cores": cores,
    }


def _of_garment(outcomes: Sequence[Outcome], garment: str) -> Mapping[str, int]:
    own = [one for one in outcomes if one.garment == garment]
    ends = [end for one in own for end in one.ends]
    return {"recipes": len(own), "replays": len(ends), "reached": ends.count("")}


def _of_operation(name: str, asked: Sequence[Any]) -> Mapping[str, Any]:
    own = [one.refused for one in asked if one.operation == name]
    refused = Counter(code for code in own if code)
    return {"asked": len(own), "ran": own.count(""), "refused": dict(refused.most_common())}


def page(found: Summary) -> str:
    """The page as text."""
    return "\n".join([HEAD, *_figures(found), *_garments(found), *_operations(found), *_stops(found)]) + "\n"


def _figures(found: Summary) -> Iterator[str]:
    share = 100.0 * found["reached"] / max(found["replays"], 1)
    yield f"{found['recipes']} recipes, {found['runs']} runs on bodies, {found['seconds']:.0f} s on "
    yield f"{found['cores']} cores. Of {found['replays']} replays on another body {found['reached']} reached"
    yield f"the end of the recipe: **{share:.1f} %**. Faults: **{len(found['faults'])}**."
    yield from ("", *(f"- seed {seed}: {told}" for seed, told in found["faults"]), "")


def _garments(found: Summary) -> Iterator[str]:
    yield from ("## By garment", "", "| garment | recipes | replays | reached the end |", "|---|--:|--:|--:|")
    for name, row in found["garments"].items():
        yield f"| {name} | {row['recipes']} | {row['replays']} | {row['reached']} |"
    yield ""
    counts = ", ".join(f"{steps} steps: {count}" for steps, count in found["steps"].items())
    yield f"How long the recipes became: {counts}."


def _operations(found: Summary) -> Iterator[str]:
    yield from ("", "## By step, while writing", "", "| step | asked | ran | refused |", "|---|--:|--:|---|")
    for name, row in found["operations"].items():
        refused = ", ".join(f"{code} {count}" for code, count in row["refused"].items())
        yield f"| {name} | {row['asked']} | {row['ran']} | {refused} |"


def _stops(found: Summary) -> Iterator[str]:
    yield from (
        "",
        "## Where replays on another body stopped",
        "",
        "| step and refusal | runs |",
        "|---|--:|",
    )
    for end, count in found["stops"].items():
        yield f"| {end} | {count} |"
