"""The report of the survey of trousers, skirts and stretch blocks as a page."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from survey_bodice_page import Shown, draft_times, figures_table, part_line, singles, word_table

INTRODUCTION: Final = """<!-- Written by benchmarks/survey_lower.py; run `make survey`. -->
# Trousers, skirts and stretch blocks on every body of the survey

Bodies: [data/survey/ansur](../../data/survey/ansur/SOURCE.md) (U.S. Army personnel; not to be taken for
other populations), each at the navel as measured and at the natural waist as estimated; stretch blocks and
other readings of the trousers at the natural waist alone. Drafted with the defaults of each block; stretch
blocks in three cloths (stretch across / along, percent). Closures are measured by outside code
(lower_judge.py, round_skirt_judge.py and stretch_judge.py in tests/support): dense polylines of the finished
outline with numpy and shapely.

How a body was made (tools/make_lower_bodies.py):

- *measured*: what the survey took, by the book's definitions; the rise was taken standing.
- *split*: the same with the crotch length in its two parts.
- *estimated*: height, bust, waist and hip were taken, the rest is estimated.

Random bodies: *plausible* ones are points of the population's own distribution, *odd* ones take each measure
at its own .85 to 1.2 of the mean, *implausible* ones at .5 to 1.7: nothing agrees with anything. They, and
stretch blocks in other cloths than 50 / 50, are judged by outside code and by what the draft itself says,
without the checks."""

KEY: Final = """- *As measured*: drafted without a cure, and everything agrees: lengths within 0.1 mm, angles
  within 1 degree (3 at the ends of side seams).
- *Exactly*: of these, no measure was taken otherwise than given by more than 1 mm (else the draft says so).
- *With a cure*: the same after the change that a refusal offered was taken.
- *Open*: drafted, but something does not agree. *Refused*: a refusal in words, with a code.
- *Unflagged*: closed, no cure, and neither the draft nor a check has anything to look at.
- *Well shaped*: closed, and the outside judge finds nothing that a patternmaker would send back (corner of
  the crotch at 45 degrees out of its range, a curve that bends the wrong way, a corner in a seam)."""

SHOWN: Final[dict[str, Shown]] = {
    "trousers": (
        ("front corner depth", 0),
        ("back corner depth", 0),
        ("front extension % hip", 1),
        ("back extension % hip", 1),
        ("back slant", 1),
        ("front darts together", 0),
        ("back darts together", 0),
        ("front side take-in", 0),
        ("back side take-in", 0),
        ("front side beyond hip", 1),
        ("back drop", 0),
        ("thigh", 0),
    ),
}
"""Figures of the tables, with their places after the point; degrees, mm and shares."""


def page(found: dict[str, Any]) -> str:
    """The report as a page."""
    parts = found["parts"]
    versions = ", ".join(f"`{block}` {version}" for block, version in found["versions"].items())
    lines = [INTRODUCTION, "", f"Versions of the blocks: {versions}.", ""]
    lines += [*part_line(found["part"]), *_counts(parts), "", KEY, ""]
    lines += ["## What is to be looked at, by code", "", *word_table(parts, "flags", "findings"), ""]
    lines += ["## What the outside judge would send back", "", *word_table(parts, "faults", "shapes"), ""]
    lines += ["## Refusals by code", "", *word_table(parts, "refusals", "refusals"), ""]
    if any(part["replaced"] for part in parts):
        lines += ["## Measures that the draft did not take as given", ""]
        lines += [*word_table(parts, "replaced", "measures"), ""]
    if any(part["opens"] for part in parts):
        lines += ["## What did not agree", "", *word_table(parts, "opens", "closures"), ""]
    lines += ["## Figures of shape", "", "5 / 50 / 95 % of the bodies drafted; mm, degrees, shares.", ""]
    for block, shown in SHOWN.items():
        bodies = [part for part in parts if "random" not in part["part"] and "tables" not in part["part"]]
        chosen = [part for part in bodies if part["part"].startswith(block)]
        lines += [*figures_table(chosen, shown), ""] if chosen else []
    lines += [*singles(found["refused_or_open"], "lower.json"), "## Time", ""]
    drafts = sum(part["bodies"] for part in parts)
    lines.append(
        f"{drafts} drafts in {found['seconds']} s on {found['cores']} cores, with checks and outside"
        f" measuring: {drafts / max(found['seconds'], 0.1):.0f} a second. The machine is shared with others."
    )
    lines += ["", *_times(parts)]
    return "\n".join(lines) + "\n"


def _counts(parts: list[dict[str, Any]]) -> Iterator[str]:
    """Bodies drafted, cured, open and refused, by line of the report."""
    keys = (
        "as_measured",
        "exactly_as_measured",
        "with_cure",
        "open",
        "refused",
        "unflagged",
        "well_shaped",
    )
    titles = "number | as measured | exactly | with a cure | open | refused | unflagged | well shaped"
    yield f"| bodies | {titles} | worst length mm |"
    yield f"|---|{'--:|' * (len(keys) + 2)}"
    for part in parts:
        total = max(part["bodies"], 1)
        shares = (f"{part[key]} ({100 * part[key] / total:.1f} %)" if part[key] else "0" for key in keys)
        yield f"| {part['part']} | {part['bodies']} | {' | '.join(shares)} | {part['worst_length_mm']:.1e} |"


def _times(parts: list[dict[str, Any]]) -> Iterator[str]:
    """How long one draft takes, by block."""
    for block in dict.fromkeys(part["part"].partition(":")[0] for part in parts):
        chosen = [part for part in parts if part["part"].startswith(f"{block}:")]
        yield f"- {block}: a draft takes {draft_times(chosen)} ms (medians of the lines)."
