"""A house table from the text of a TOML file."""

import math
import tomllib
from collections.abc import Callable, Mapping
from typing import Any, get_args

from notchbook.errors import InputError
from notchbook.finish.house_table import HouseTable, Supply
from notchbook.finish.row import GRADES, Row
from notchbook.finish.stock_text import stocks
from notchbook.pattern import frozen_map
from notchbook.units import UNITS, Unit, parse_length, suggestion

_SECTIONS = ("name", "unit", "supply", "base", "allowance", "mark", "zip")

Bases = Mapping[str, Callable[[], HouseTable]]
"""The tables that a text may start from, by the word that names them."""


def table_from_text(text: str, where: str, base: HouseTable | None, bases: Bases) -> HouseTable:
    """The table of a TOML text, on top of ``base`` (None: the text holds every row) or of the one of
    ``bases`` that it names."""
    try:
        data = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise InputError("house-file-not-toml", path=where, detail=str(error)) from error
    for key in data:
        if key not in _SECTIONS:
            raise InputError(
                "house-key-unknown", key=key, known=_SECTIONS, suggestion=suggestion(key, _SECTIONS)
            )
    base = _base_of(data, base, bases)
    unit = _unit_of(data)
    allowances = dict(base.allowances) if base else {}
    marks = dict(base.marks) if base else {}
    allowances.update(_rows(data, "allowance", unit, allowances))
    marks.update(_rows(data, "mark", unit, marks))
    zips = (dict(base.zips) if base else {}) | stocks(data, "zip", unit, base.zips if base else {})
    supply = data.get("supply", base.supply if base else "whole")
    if supply not in get_args(Supply):
        raise InputError("house-supply-unknown", given=supply, known=get_args(Supply))
    name = str(data.get("name", base.name if base else where))
    return HouseTable(name, frozen_map(allowances), frozen_map(marks), supply, frozen_map(zips))


def _base_of(data: Mapping[str, Any], base: HouseTable | None, bases: Bases) -> HouseTable | None:
    wanted = data.get("base")
    if wanted is None:
        return base
    if wanted not in bases:
        raise InputError("house-base-unknown", given=wanted, known=tuple(bases))
    return bases[wanted]()


def _unit_of(data: Mapping[str, Any]) -> Unit:
    given = data.get("unit")
    for unit in UNITS:
        if given == unit:
            return unit
    raise InputError("house-unit-missing", given=given if given is not None else "none", known=UNITS)


def _rows(data: Mapping[str, Any], section: str, unit: Unit, known: Mapping[str, Row]) -> dict[str, Row]:
    values = data.get(section, {})
    if not isinstance(values, Mapping):
        raise InputError("house-section-malformed", section=section)
    if section == "mark" and known:
        for key in values:
            if key not in known:
                names = tuple(known)
                raise InputError("house-key-unknown", key=key, known=names, suggestion=suggestion(key, names))
    return {key: _row(key, value, unit, known.get(key)) for key, value in values.items()}


def _row(key: str, value: object, unit: Unit, old: Row | None) -> Row:
    given = value if isinstance(value, Mapping) else {"value": value}
    row_unit = str(given.get("unit", old.unit if old else "mm"))
    grade = str(given.get("grade", "house"))
    if grade not in GRADES:
        raise InputError("house-grade-unknown", key=key, given=grade, known=GRADES)
    amount = _amount(key, given.get("value"), unit if row_unit == "mm" else None)
    return Row(amount, str(given.get("source", "set in this house")), grade, row_unit)


def _amount(key: str, value: object, unit: Unit | None) -> float:
    """The number in mm, or as it stands when ``unit`` is None (times, percent)."""
    if isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value):
        return parse_length(repr(float(value)), unit) if unit else float(value)
    if isinstance(value, str) and unit:
        return parse_length(value, unit)
    raise InputError("house-value-unusable", key=key, value=value, least=0, most=200, unit="mm")
