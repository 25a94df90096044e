"""The report of the survey of bodice and sleeve as a page."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

INTRODUCTION: Final = """<!-- Written by benchmarks/survey_bodice.py; run `make survey`. -->
# Bodice and sleeve on every body of the survey

Bodies: [data/survey/ansur](../../data/survey/ansur/SOURCE.md) (U.S. Army personnel; not to be taken for
other populations), each at the navel as measured and at the natural waist as estimated. A bodice with its
sleeve is drafted for each, with the defaults of the blocks and wool dress cloth for the cap. Closures are
measured by outside code (tests/support/bodice_judge.py): dense polylines of the finished outline with numpy
and shapely, darts closed by turning about their points, the cap laid on the armhole.

How a body was made (tools/make_upper_bodies.py):

- *measured*: what the survey took, by the book's definitions; the rest estimated from that.
- *estimated*: height, bust, waist and hip were taken, the rest is estimated.
- *scatter*: as *measured*, and what the survey did not take scatters as it does from body to body (0.8 of the
  standard deviation that is left, seeded). Men have nothing there to scatter: their front length is not
  known."""

KEY: Final = """- *As measured*: drafted without a cure, and everything agrees: lengths within 0.1 mm, angles
  within 1 degree (3 at the ends of the side seam), cap laid on the armhole within 3 mm in front and 4 behind
  over 60 mm.
- *With a cure*: the same after the change that the draft offered was taken (a lower armhole for a full arm or
  for a cap that leaves it, a wider sleeve for a thin arm).
- *Open*: drafted, but something does not agree. *Refused*: a refusal in words, with a code.
- *Unflagged*: closed, no cure, and neither the draft nor a check has anything to look at (that a draft rests
  on estimates is said of each and not counted)."""

Shown = tuple[tuple[str, int], ...]

SHOWN: Final[Shown] = (
    ("dart angle", 1),
    ("neck width", 0),
    ("neck depth", 0),
    ("armhole width", 0),
    ("armhole front", 0),
    ("armhole back", 0),
    ("armhole hollow front", 2),
    ("cap height", 0),
    ("cap to armhole", 2),
    ("front share of biceps", 2),
    ("lay gap front", 1),
    ("lay gap back", 1),
)
"""Figures of the table, with their places after the point; degrees, mm and shares."""


def page(found: dict[str, Any]) -> str:
    """The report as a page."""
    lines = [INTRODUCTION, "", *part_line(found["part"]), *count_table(found["parts"]), "", KEY, ""]
    lines += ["## What is to be looked at, by code", "", *word_table(found["parts"], "flags", "findings"), ""]
    lines += ["## Refusals by code", "", *word_table(found["parts"], "refusals", "refusals"), ""]
    if any(part["replaced"] for part in found["parts"]):
        lines += ["## Measures that the draft did not take as given", ""]
        lines += [*word_table(found["parts"], "replaced", "measures"), ""]
    if any(part["opens"] for part in found["parts"]):
        lines += ["## What did not agree", "", *word_table(found["parts"], "opens", "closures"), ""]
    lines += ["## Figures of shape", "", "5 / 50 / 95 % of the bodies drafted; mm, degrees, shares.", ""]
    lines += [
        *figures_table(found["parts"]),
        "",
        *singles(found["refused_or_open"], "bodice.json"),
        "## Time",
        "",
    ]
    bodies = sum(part["bodies"] for part in found["parts"])
    lines.append(
        f"{bodies} bodies in {found['seconds']} s on {found['cores']} cores, with checks and outside"
        f" measuring: {bodies / max(found['seconds'], 0.1):.0f} bodies a second. A draft of both takes"
        f" {draft_times(found['parts'])} ms (medians of the lines). The machine is shared with others."
    )
    return "\n".join(lines) + "\n"


def part_line(part: tuple[int, int] | None) -> Iterator[str]:
    """That not all bodies of the survey stand here, where it is so."""
    if part is not None:
        yield f"A seeded part: {part[0]} of the {part[1]} bodies; without `--sample` all are drafted."
        yield ""


def count_table(parts: list[dict[str, Any]]) -> Iterator[str]:
    """Bodies drafted, cured, open and refused, by line of the report."""
    yield "| bodies | number | as measured | with a cure | open | refused | unflagged | worst length mm |"
    yield "|---|--:|--:|--:|--:|--:|--:|--:|"
    for part in parts:
        total = max(part["bodies"], 1)
        keys = ("as_measured", "with_cure", "open", "refused", "unflagged")
        shares = (f"{part[key]} ({100 * part[key] / total:.1f} %)" if part[key] else "0" for key in keys)
        yield f"| {part['part']} | {part['bodies']} | {' | '.join(shares)} | {part['worst_length_mm']:.1e} |"


def word_table(parts: list[dict[str, Any]], key: str, title: str) -> Iterator[str]:
    """How often each word of a key was found, by line of the report."""
    yield f"| bodies | {title} |"
    yield "|---|---|"
    for part in parts:
        share = 100 / max(part["bodies"], 1)
        words = ", ".join(f"{code} {count} ({share * count:.1f} %)" for code, count in part[key].items())
        yield f"| {part['part']} | {words or 'none'} |"


def figures_table(parts: list[dict[str, Any]], shown: Shown = SHOWN) -> Iterator[str]:
    """Figures of shape by line of the report, but of tables and impossible bodies."""
    chosen = [part for part in parts if not part["part"].startswith(("table", "random, implausible"))]
    yield f"| bodies | {' | '.join(name for name, _ in shown)} |"
    yield f"|---|{'--:|' * len(shown)}"
    for part in chosen:
        cells = (_cell(part["figures"].get(name, []), places) for name, places in shown)
        yield f"| {part['part']} | {' | '.join(cells)} |"


def _cell(values: list[float], places: int) -> str:
    return " / ".join(f"{value:.{places}f}" for value in values)


def singles(items: list[dict[str, Any]], file: str, most: int = 60) -> Iterator[str]:
    """Bodies one by one that were refused or did not close; all stand in the file."""
    if not items:
        return
    yield "## Bodies refused or open, one by one"
    yield ""
    if len(items) > most:
        yield f"The first {most} of {len(items)}; all stand in {file}."
        yield ""
    yield "| bodies | body | what |"
    yield "|---|---|---|"
    for item in items[:most]:
        what = f"{item['refused']}: {item.get('facts', '')}" if "refused" in item else "; ".join(item["open"])
        yield f"| {item['part']} | {item['name']} | {what} |"
    yield ""


def draft_times(parts: list[dict[str, Any]]) -> str:
    """The least and the most of the lines' medians, in words."""
    middles = [part["draft_ms"][1] for part in parts if part["draft_ms"]]
    return f"{min(middles):.0f} to {max(middles):.0f}" if middles else "no"
