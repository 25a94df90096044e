"""How long bodice and sleeve take, and the lengths of their edges beside general-purpose libraries.

Run as ``python benchmarks/bench_upper.py``. The body is the invented medium one of the sheets. Lengths by
ours, svgpathtools and scipy must come to the same, or nothing is timed.
"""

from __future__ import annotations

import os
import statistics
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from itertools import islice
from pathlib import Path
from typing import Any, Final

from scipy.integrate import quad
from svgpathtools import CubicBezier

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks")]

from forgetting import forget
from make_upper_bodies import write
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.app.made_to_measure import GarmentAsked, make_to_measure
from notchbook.app.wishes.making_it_measure import candidates
from notchbook.body import MeasureSet
from notchbook.errors import InputError
from notchbook.geometry import Cubic
from notchbook.geometry import Path as DrawnPath
from notchbook.recipe import Replay
from notchbook.recipe.targets import Order, make_it_measure, number_named, read_wish
from timing import Figure, Row, median_ms, timed
from upper_sheets import SETTINGS, bodies

ACCURACY: Final = 1e-3
"""mm of each length."""

OUT_OF_REACH: Final = "length bodice.front/armhole = 90 cm"
"""More than twice as much as any number gives."""

KEY: Final = f"""\
The body is the invented medium one of docs/sheets. What one draft keeps for the next is thrown away before
each. The wish is an armhole of the front of 90 cm. Made to measure drafts bodice and sleeve and runs the
checks. The lengths of all curved edges of both are worked out anew, each to {ACCURACY:g} mm; all three ways
agree to that."""

Numbers = tuple[complex, complex, complex, complex]


def figures(count: int = 200) -> Iterator[Figure]:
    """The jobs of the house, one after the other."""
    measures = next(made for name, _, made in bodies() if name == "medium-92")
    both = draft("sleeve", measures, SETTINGS)
    yield timed("draft of the bodice block", lambda: _anew_drafted("bodice", measures, {}))
    yield timed(
        "draft of bodice and sleeve, cap fitted to the armhole",
        lambda: _anew_drafted("sleeve", measures, SETTINGS),
    )
    yield timed("checks while shaping: bodice and sleeve", lambda: examine(both, cut=False))
    yield timed("all checks: bodice and sleeve", lambda: examine(both), 7)
    yield from _wishes(both)
    with tempfile.TemporaryDirectory() as folder:
        path, report = Path(folder) / "bodies.csv", Path(folder) / "report.csv"
        write("natural", "measured", path)
        with path.open(encoding="utf-8") as stream:
            lines = list(islice(stream, count + 1))
        path.write_text("".join(lines), encoding="utf-8")
        for cores in range(1, min(2, os.cpu_count() or 1) + 1):
            rates = []
            for _ in range(3):
                made = make_to_measure(GarmentAsked("sleeve", SETTINGS), path, report, cores=cores)
                rates.append(made.bodies / made.seconds)
            job = f"bodice and sleeve made to measure, {count} bodies, {cores} core{'s' * (cores > 1)}"
            yield Figure(job, min(rates), statistics.median(rates), max(rates), "bodies/s")


def _anew_drafted(block: str, measures: MeasureSet, settings: Mapping[str, Any]) -> Replay:
    """Drafted with nothing kept of the draft before."""
    forget()
    return draft(block, measures, settings)


def _wishes(run: Replay) -> Iterator[Figure]:
    """A wish that no number can give: by one number, and which of all numbers would."""
    wish = read_wish(OUT_OF_REACH, run, "mm")
    order = Order(wish, number_named(run.recipe, "bodice-1.bust_ease"))

    def by_one() -> None:
        forget()
        with suppress(InputError):
            make_it_measure(run, (order,))

    def by_all() -> None:
        forget()
        candidates(run, wish)

    yield timed("a wish out of reach, by the ease at the bust", by_one, 3)
    yield timed("the same, by all numbers of bodice and sleeve", by_all, 3)


def rows() -> list[Row]:
    """The lengths of all curves, beside the same by general-purpose libraries; medians."""
    measures = next(made for name, _, made in bodies() if name == "medium-92")
    curves = list(_curves(draft("sleeve", measures, SETTINGS)))
    ways: dict[str, Callable[[], float]] = {
        "notchbook": lambda: sum(DrawnPath.of(_anew(curve)).length for curve in curves),
        "svgpathtools": lambda: sum(CubicBezier(*_numbers(c)).length(error=ACCURACY / 10.0) for c in curves),
        "scipy": lambda: sum(_quad(_numbers(curve)) for curve in curves),
    }
    found = [work() for work in ways.values()]
    if max(found) - min(found) > ACCURACY * len(curves):
        raise RuntimeError(f"the lengths disagree: {found}")
    task = f"lengths of {len(curves)} curves of bodice and sleeve"
    return [(task, who, median_ms(work)) for who, work in ways.items()]


def _curves(run: Replay) -> Iterator[Cubic]:
    for piece in run.pattern.pieces.values():
        for edge in piece.outline:
            yield from (segment for segment in edge.path.segments if isinstance(segment, Cubic))


def _anew(curve: Cubic) -> Cubic:
    return Cubic(curve.start, curve.start_handle, curve.end_handle, curve.end)


def _numbers(curve: Cubic) -> Numbers:
    a, b, c, d = (
        complex(point.x, point.y) for point in (curve.start, curve.start_handle, curve.end_handle, curve.end)
    )
    return a, b, c, d


def _quad(numbers: Numbers) -> float:
    a, b, c, d = numbers
    first, second, third = 3.0 * (b - a), 3.0 * (c - b), 3.0 * (d - c)

    def speed(t: float) -> float:
        return abs((1 - t) ** 2 * first + 2 * t * (1 - t) * second + t**2 * third)

    return float(quad(speed, 0.0, 1.0, epsabs=ACCURACY / 10.0)[0])


if __name__ == "__main__":
    for item in figures():
        print(f"{item.job:60} {item.least:9.2f} {item.median:9.2f} {item.most:9.2f} {item.unit}")
    for task, who, milliseconds in rows():
        print(f"{task:60} {who:14} {milliseconds:9.4f} ms")
