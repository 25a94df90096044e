"""Holding one thing against another: bodies, dress forms, size charts, and a style against a client."""

from dataclasses import dataclass, replace
from pathlib import Path

from notchbook.app.eases.ease_rows import ease_table
from notchbook.body import MeasureSet, plain_key, read_measures
from notchbook.body.charts import SetComparison, SizeChart, compare_sets, holds_chart, read_chart
from notchbook.body.charts.shipped import shipped_charts
from notchbook.errors import InputError
from notchbook.recipe import Replay
from notchbook.recipe.estimated_reads import keys_read
from notchbook.units import quoted

SIZE_SIGN = ":"
"""Between the name of a chart and the label of a size: ``women:92``."""


@dataclass(frozen=True, slots=True)
class StyleGirth:
    """One girth of a style, mm: the body it was drafted for, the client, and the garment.

    ``finished`` is the girth as sewn, along the sew line, darts closed and the edges of an opening brought
    together; nothing is taken off for laps, since an underlap is drawn beyond the girth. None where
    the pattern no longer has it. ``wanted_ease`` was drafted; ``body_ease`` and ``client_ease`` are what the
    finished girth leaves on each. ``usual`` is the usual ease; ``client`` None where she was not measured.
    """

    name: str
    measure: str
    body: float
    client: float | None
    finished: float | None
    wanted_ease: float
    usual: tuple[float, float] | None

    @property
    def body_ease(self) -> float | None:
        """mm between the finished girth and the body that the style was drafted for."""
        return None if self.finished is None else self.finished - self.body

    @property
    def client_ease(self) -> float | None:
        """mm between the finished girth and the client."""
        return None if self.finished is None or self.client is None else self.finished - self.client

    @property
    def short_by(self) -> float:
        """mm of ease that the client lacks to the usual least (to none, where no ease is usual); else 0."""
        least = 0.0 if self.usual is None else self.usual[0]
        return 0.0 if self.client_ease is None else max(least - self.client_ease, 0.0)


@dataclass(frozen=True, slots=True)
class StyleComparison:
    """A style against a client: its girths, and her measures against those that it was drafted from."""

    style: str
    girths: tuple[StyleGirth, ...]
    measures: SetComparison

    @property
    def too_tight(self) -> tuple[StyleGirth, ...]:
        """Girths in which the client has less than the least usual ease, the tightest first."""
        tight = [girth for girth in self.girths if girth.short_by > 0.0]
        return tuple(sorted(tight, key=lambda girth: -girth.short_by))


def compare_style(run: Replay, client: MeasureSet) -> StyleComparison:
    """The style as drafted for its own body against a client, by the measures that its steps read.

    The pattern is not changed; to draft it for her, run the style on her measures.
    """
    asked = set(keys_read(run))
    drafted_for, hers = (_only(measures, asked) for measures in (run.measures, client))
    compared = compare_sets(drafted_for, hers)
    leveled = {row.key: row.second.value for row in compared.rows}
    girths = tuple(
        StyleGirth(
            girth.name,
            girth.measure,
            girth.body,
            leveled.get(girth.measure),
            girth.pattern,
            girth.ease,
            girth.usual,
        )
        for girth in ease_table(run)
        if girth.kind == "girth" and girth.measure
    )
    return StyleComparison(run.recipe.name, girths, compared)


def read_side(word: str) -> MeasureSet | SizeChart:
    """What a word of a command means: a file of measures or of a chart, a shipped chart, a size of a chart.

    A size is named after its chart and a colon, ``women:92`` or ``chart.csv:M``. Refused with InputError: a
    file that is not there or cannot be read, an unknown size (``chart-size-unknown``).
    """
    path = Path(word)
    if path.exists():
        return read_chart(path) if holds_chart(path) else read_measures(path)
    if word in shipped_charts():
        return shipped_charts()[word]
    name, sign, label = word.rpartition(SIZE_SIGN)
    if sign and (name in shipped_charts() or Path(name).exists()):
        return read_chart_named(name).size(label)
    return read_measures(path)


def read_chart_named(word: str) -> SizeChart:
    """A chart by its file or shipped name; anything else is refused (``chart-unknown``)."""
    if Path(word).exists():
        return read_chart(word)
    if word not in shipped_charts():
        raise InputError("chart-unknown", word=quoted(word), known=tuple(shipped_charts()))
    return shipped_charts()[word]


def read_set_named(word: str) -> MeasureSet:
    """A body, form or size, as :func:`read_side`; a whole chart is refused (``chart-not-a-set``)."""
    side = read_side(word)
    if isinstance(side, SizeChart):
        raise InputError("chart-not-a-set", word=quoted(word), size=side.labels[0] if side.labels else "M")
    return side


def _only(measures: MeasureSet, keys: set[str]) -> MeasureSet:
    kept = {name: value for name, value in measures.values.items() if plain_key(name) in keys}
    return replace(measures, values=kept)
