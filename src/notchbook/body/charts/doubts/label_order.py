"""Whether the labels of the sizes rise from left to right."""

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.errors import InputError

_LETTERS: Final = ("XXXS", "XXS", "XS", "S", "M", "L", "XL", "XXL", "XXXL", "XXXXL", "XXXXXL", "XXXXXXL")
_SHORT_LETTERS: Final = re.compile(r"([2-6])X(S|L)")
_NUMBER: Final = re.compile(r"\d+")


def label_doubts(chart: SizeChart) -> Iterator[ChartDoubt]:
    """A doubt for every pair of neighbors whose labels fall; labels that are no sizes we know are let be."""
    ranks = label_ranks(chart.labels)
    if ranks is None:
        return
    for (left, low), (right, high) in pairwise(zip(chart.labels, ranks, strict=True)):
        if high <= low:
            yield ChartDoubt(
                "check", (), (left, right), InputError("chart-labels-fall", left=left, right=right, where="")
            )


def label_ranks(labels: Sequence[str]) -> tuple[float, ...] | None:
    """The labels as numbers that rise with the size, or None where they are not all of one kind.

    Numbers stand for themselves, 00 lies below 0, letters count from XXXS up.
    """
    for rank in (_number_rank, _letter_rank):
        found = [rank(label) for label in labels]
        known = tuple(one for one in found if one is not None)
        if known and len(known) == len(found):
            return known
    return None


def missing_label(labels: Sequence[str], at: int) -> str:
    """The label that a size between ``at`` and ``at`` + 1 would have; empty where that cannot be told."""
    ranks = label_ranks(labels)
    if ranks is None or len(ranks) < 4:
        return ""
    steps = sorted(high - low for low, high in pairwise(ranks))
    usual = steps[len(steps) // 2]
    if ranks[at + 1] - ranks[at] != 2 * usual:
        return ""
    middle = (ranks[at] + ranks[at + 1]) / 2
    if _NUMBER.fullmatch(labels[at]):
        return f"{middle:g}"
    return _LETTERS[int(middle)]


def _number_rank(label: str) -> float | None:
    if not _NUMBER.fullmatch(label):
        return None
    # 00 lies below 0, and 000 below 00.
    return float(1 - len(label)) if not label.strip("0") else float(label)


def _letter_rank(label: str) -> float | None:
    plain = _SHORT_LETTERS.sub(lambda found: "X" * int(found[1]) + found[2], label.upper())
    return float(_LETTERS.index(plain)) if plain in _LETTERS else None
