"""The verbs of `notchbook measures`."""

from collections.abc import Callable

from notchbook.cli.measures.chart import chart
from notchbook.cli.measures.check import check
from notchbook.cli.measures.compare import compare
from notchbook.cli.measures.estimate import estimate
from notchbook.cli.measures.export_measures import export_measures
from notchbook.cli.measures.import_measures import import_measures
from notchbook.cli.measures.list_measures import list_measures
from notchbook.cli.measures.pad import pad
from notchbook.cli.measures.sheet import sheet
from notchbook.cli.verb_group import verb_group

MEASURES_VERBS: dict[str, Callable[..., None]] = {
    "list": list_measures,
    "sheet": sheet,
    "check": check,
    "estimate": estimate,
    "compare": compare,
    "pad": pad,
    "chart": chart,
    "import": import_measures,
    "export": export_measures,
}

measures_app = verb_group(
    "Look over, fill in and compare measures of bodies, dress forms and size charts.", MEASURES_VERBS
)
