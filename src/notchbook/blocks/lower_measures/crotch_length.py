"""The crotch length of a body of whom nobody took it, from the table ``crotch_length.toml``."""

from collections.abc import Mapping
from functools import cache
from typing import Any, Literal

from notchbook.blocks._trade_figures import trade_table

CrotchOf = Literal["women", "men", "children"]
"""Whose bodies foretell it."""


def usual_crotch_length(
    of: CrotchOf, rise: float, hip: float, waist: float, drop: float
) -> tuple[float, float]:
    """The crotch length that bodies of this standing rise, hip and waist have on average, and its ±, mm.

    ``drop`` is how far the waist that they were taken from lies below the natural one, mm.
    """
    row = _table()["natural"][of]
    natural = row["rise"] * (rise + drop) + row["hip"] * hip + row["waist"] * waist
    return float(natural - _table()["lower"]["per_drop"]["value"] * drop), float(row["error"])


@cache
def _table() -> Mapping[str, Any]:
    return trade_table("notchbook.blocks.lower_measures", "crotch_length.toml")
