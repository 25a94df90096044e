"""Eases of the bodice by silhouette and wearer (``eases.toml``), and what a loose garment or one that is worn
over others adds (``layers.toml``)."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any, Final, Literal

from notchbook.blocks._trade_figures import trade_table
from notchbook.recipe import UsualEase
from notchbook.recipe.usual_ease import Grade

Silhouette = Literal["close", "fitted", "semi_fitted", "loose", "unlined_jacket", "jacket", "coat"]
"""How close the bodice lies, from near to far: worn on the body, then worn over other garments."""

Layer = Literal["unlined_jacket", "jacket", "coat"]
"""The silhouettes that are worn over other garments; a ``jacket`` is lined."""

Wearer = Literal["women", "men", "children"]
"""Whom the eases are for: ``women`` stands for a bodice with bust shaping."""

EASES = ("bust", "waist", "hip", "across_back", "across_chest", "scye", "neck")
"""What has an ease of its own."""

LAYER_WORDS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "shoulder_longer": "shoulder length",
        "shoulder_raised": "shoulder height",
        "neck_lowered": "neck depth",
    }
)
"""What a garment that is worn loose or over others has more, by the parameter that says it, in words."""

_EVERYBODY: Final = "everybody"
_NO_LAYER: Final = "no_layer"


@dataclass(frozen=True, slots=True)
class EaseRow:
    """One ease, mm of the whole girth or width, and its usual range."""

    value: float
    least: float
    most: float
    source: str
    grade: Grade

    @property
    def usual(self) -> tuple[float, float]:
        """From least to most, mm."""
        return self.least, self.most


def ease_row(wearer: Wearer, silhouette: Silhouette, of: str) -> EaseRow:
    """The row of one ease."""
    return _rows()[wearer, silhouette, of]


def layer_row(wearer: Wearer, silhouette: Silhouette, of: str) -> EaseRow:
    """How much the silhouette has more at a place of LAYER_WORDS; nothing where it lies on the body."""
    rows = _layer_rows()
    asked = ((wearer, silhouette, of), (_EVERYBODY, silhouette, of), (_EVERYBODY, _NO_LAYER, of))
    return next(rows[one] for one in asked if one in rows)


def usual_eases() -> tuple[UsualEase, ...]:
    """Both tables, as the step states them; what is nothing on the body is left out."""
    return (*_stated_eases(), *_stated_layers())


def _stated_eases() -> Iterator[UsualEase]:
    for (wearer, silhouette, of), row in _rows().items():
        yield _stated(wearer, silhouette, (f"{of}_ease", of.replace("_", " ")), row)


def _stated_layers() -> Iterator[UsualEase]:
    for (wearer, silhouette, of), row in _layer_rows().items():
        if silhouette != _NO_LAYER:
            yield _stated("" if wearer == _EVERYBODY else wearer, silhouette, (of, LAYER_WORDS[of]), row)


def _stated(wearer: str, silhouette: str, parameter: tuple[str, str], row: EaseRow) -> UsualEase:
    """A row with the parameter that overrides it and what it is for in words."""
    return UsualEase(
        silhouette=silhouette,
        parameter=parameter[0],
        of=parameter[1],
        drafted=row.value,
        least=row.least,
        most=row.most,
        source=row.source,
        grade=row.grade,
        wearer=wearer,
    )


@cache
def _rows() -> dict[tuple[str, str, str], EaseRow]:
    return _read("eases.toml")


@cache
def _layer_rows() -> dict[tuple[str, str, str], EaseRow]:
    return _read("layers.toml")


def _read(table: str) -> dict[tuple[str, str, str], EaseRow]:
    return {
        (wearer, silhouette, of): _row(row)
        for wearer, silhouettes in trade_table("notchbook.blocks.bodice_pieces", table).items()
        for silhouette, rows in silhouettes.items()
        for of, row in rows.items()
    }


def _row(row: Mapping[str, Any]) -> EaseRow:
    return EaseRow(float(row["value"]), float(row["least"]), float(row["most"]), row["source"], row["grade"])
