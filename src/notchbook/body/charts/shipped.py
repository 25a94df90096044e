"""The size charts that come with the program, all computed by us; no maker's chart is among them."""

from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.chart_data import chart_from_data
from notchbook.body.files.read_json import json_data
from notchbook.body.measure_set import POPULATIONS, PopulationName


@cache
def shipped_chart(name: PopulationName) -> SizeChart:
    """The computed chart of a population: bust or chest classes of EN 13402-3, all else computed."""
    place = files("notchbook.body.charts").joinpath("tables", f"{name}.json")
    return chart_from_data(json_data(place.read_text(encoding="utf-8")))


def shipped_charts() -> Mapping[str, SizeChart]:
    """Every shipped chart by the name under which a command finds it."""
    return MappingProxyType({name: shipped_chart(name) for name in POPULATIONS})
