"""Size charts and dress forms: charts as data and files, the nearest size, comparing and padding.

Nothing here loads numerics; the shipped charts were computed beforehand, and :func:`check_chart` loads the
model of a population only where a chart names one.
"""

from notchbook.body.charts.chart import CHART_STATUSES, ChartStatus, SizeChart
from notchbook.body.charts.chart_data import chart_from_data, chart_to_data
from notchbook.body.charts.chart_files import chart_csv, chart_from_csv, holds_chart, read_chart, write_chart
from notchbook.body.charts.comparing.compare_sets import MeasureDifference, SetComparison, compare_sets
from notchbook.body.charts.comparing.garment_weights import (
    GARMENT_WEIGHTS,
    GARMENT_WORDS,
    GARMENTS,
    Garment,
)
from notchbook.body.charts.comparing.goes_over import GOES_OVER, GoesOver
from notchbook.body.charts.comparing.goes_over_words import goes_over_words
from notchbook.body.charts.comparing.nearest_size import NearestSize, SizeDeviation, nearest_size
from notchbook.body.charts.comparing.size_position import SizePosition, size_position
from notchbook.body.charts.comparing.standard_classes import StandardClasses, standard_classes
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.charts.doubts.check_chart import check_chart
from notchbook.body.charts.editing import (
    add_size,
    interpolate_size,
    remove_row,
    remove_size,
    rename_size,
    set_cell,
    set_row,
)
from notchbook.body.charts.en13402 import SizeClass, letter_code, letter_codes, size_class, size_classes
from notchbook.body.charts.padding.choose_form import choose_form, largest_size_within
from notchbook.body.charts.padding.length_changes import LengthChange
from notchbook.body.charts.padding.level_plan import LevelPlan
from notchbook.body.charts.padding.not_compared import NotCompared, not_compared_sentences
from notchbook.body.charts.padding.padding_level import PaddingLevel, padding_levels
from notchbook.body.charts.padding.padding_plan import LAYER_THICKNESS, PaddingPlan, padding_plan
from notchbook.body.charts.shipped import shipped_chart, shipped_charts

__all__ = [
    "CHART_STATUSES",
    "GARMENTS",
    "GARMENT_WEIGHTS",
    "GARMENT_WORDS",
    "GOES_OVER",
    "LAYER_THICKNESS",
    "ChartDoubt",
    "ChartStatus",
    "Garment",
    "GoesOver",
    "LengthChange",
    "LevelPlan",
    "MeasureDifference",
    "NearestSize",
    "NotCompared",
    "PaddingLevel",
    "PaddingPlan",
    "SetComparison",
    "SizeChart",
    "SizeClass",
    "SizeDeviation",
    "SizePosition",
    "StandardClasses",
    "add_size",
    "chart_csv",
    "chart_from_csv",
    "chart_from_data",
    "chart_to_data",
    "check_chart",
    "choose_form",
    "compare_sets",
    "goes_over_words",
    "holds_chart",
    "interpolate_size",
    "largest_size_within",
    "letter_code",
    "letter_codes",
    "nearest_size",
    "not_compared_sentences",
    "padding_levels",
    "padding_plan",
    "read_chart",
    "remove_row",
    "remove_size",
    "rename_size",
    "set_cell",
    "set_row",
    "shipped_chart",
    "shipped_charts",
    "size_class",
    "size_classes",
    "size_position",
    "standard_classes",
    "write_chart",
]
