"""The page of the survey of contradictions in the upper body, from its figures."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from notchbook.body import measure_entry

INTRODUCTION = """<!-- Written by benchmarks/survey_upper_measures.py; run `make survey`. -->
# Contradictions between measures of the upper body: what the draft names

Before a bodice is drafted its measures are held against each other: which two do not go together, and which
single value would explain both. Here wrong values are planted into bodies of
[data/survey/ansur](../../data/survey/ansur/SOURCE.md) whose row number ends in 0, from which neither the
populations nor the limits were made. What the survey took is each body's own, put to the natural waist and
to the definitions of this book. What it did not take (front lengths, bust point, chest, slope, upper bust) is
drawn by chance with its whole scatter, five times for each body, and every value is read with the scatter of
a tape. So for those measures the figures say how well the model knows itself, not how well it knows bodies;
the survey is of soldiers."""

KEY = """- *Asked*: the draft names a disagreement. *Right*: of those, how often the measure (or all of the
  lengths) that was planted is the one named first. *Or nearly*: named first or as what would explain it
  nearly as well. *To which waist*: how often that question is asked. *Off*: how far the explaining value
  lies from the true one in the middle, where it is rightly named.
- A slip of 2 cm is hardly ever seen, and in bust, waist, widths and upper arm not even 5 cm are: bodies
  differ by more. Measure those twice."""


def page(found: dict[str, Any]) -> str:
    """The report as a page."""
    lines = [INTRODUCTION, "", KEY, ""]
    for name, part in found.items():
        lines += [f"## {name.capitalize()}", "", f"Held against {part['words']}; {part['rows']} rows.", ""]
        lines += [*_clean(part["clean"]), ""]
        lines += [*_navel(part), ""]
        lines += [*_slips(part["slips"]), ""]
        lines += [*_pairs(part["pairs"]), ""]
        lines += [*_limits(part["limits"]), ""]
    return "\n".join(lines).rstrip() + "\n"


def _clean(clean: dict[str, dict[str, float]]) -> Iterator[str]:
    yield "### Clean bodies"
    yield ""
    yield "| bodies | asked | of all, only that the bust dart is lost | a measured value replaced |"
    yield "|---|---|---|---|"
    for words, one in clean.items():
        shares = (one[key] for key in ("asked", "lost dart", "replaced"))
        yield f"| {words} | " + " | ".join(f"{share:.1%}" for share in shares) + " |"


def _navel(part: dict[str, Any]) -> Iterator[str]:
    yield "### Taken to the navel"
    yield ""
    yield "| taken to the navel | asked | right | or nearly | to which waist | off, mm |"
    yield "|---|---|---|---|---|---|"
    for words, one in part["navel"].items():
        yield f"| {words} | {_figures(one, ('asked', 'right', 'nearly', 'question'))} | {one['off']:.0f} |"
    darts = part["all at the navel, dart"]
    if darts:
        yield ""
        told = ", ".join(f"{words} {angle:.1f}°" for words, angle in darts.items())
        yield f"The bust dart that the lengths leave, in the middle: {told}."


def _slips(slips: dict[str, Any]) -> Iterator[str]:
    yield "### One value off"
    yield ""
    yield "Asked, and of those rightly named; mm (degrees for the slope)."
    yield ""
    sizes = list(next(iter(slips.values())))
    yield "| measure | " + " | ".join(sizes) + " |"
    yield "|---" * (len(sizes) + 1) + "|"
    for key, by_size in slips.items():
        own = "" if list(by_size) == sizes else f" ({', '.join(by_size)})"
        shares = " | ".join(f"{one['asked']:.0%}, {one['right']:.0%}" for one in by_size.values())
        yield f"| {_label(key)}{own} | {shares} |"


def _pairs(found: dict[str, dict[str, float]]) -> Iterator[str]:
    yield "### The pairs"
    yield ""
    yield "First less second: mean and SD; the last column is the SD of the first given the second, height,"
    yield "bust and waist."
    yield ""
    yield "| pair | mean | SD | SD given |"
    yield "|---|---|---|---|"
    for keys, one in found.items():
        labels = " less ".join(_label(key) for key in keys.split(", "))
        yield f"| {labels} | {one['difference']:.0f} | {one['deviation']:.0f} | {one['given']:.1f} |"


def _limits(found: dict[str, list[float]]) -> Iterator[str]:
    yield "### The figures of the limits"
    yield ""
    yield "On clean bodies; mm, degrees (bust dart) or shares."
    yield ""
    yield "| limit | 0.1 % | 5 % | 50 % | 95 % | 99.9 % |"
    yield "|---|---|---|---|---|---|"
    for name, values in found.items():
        yield f"| {name.replace('_', ' ')} | " + " | ".join(f"{value:g}" for value in values) + " |"


def _figures(one: dict[str, float], names: tuple[str, ...]) -> str:
    return " | ".join(f"{one[name]:.0%}" for name in names)


def _label(key: str) -> str:
    label = measure_entry(key).label
    return label[0].lower() + label[1:]
