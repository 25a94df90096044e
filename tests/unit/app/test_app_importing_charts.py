"""A size chart from a table: sizes in the order of the table, whole or not at all."""

import pytest

from notchbook.app.charts.importing import preview_text
from notchbook.app.charts.importing_charts import imported_chart
from notchbook.errors import InputError

TABLE = "Size,10,12\nHip depth (cm),20,20.5\nWaist (cm),68,72\n"


def test_the_labels_are_those_of_the_table_and_the_sizes_step_by_a_girth() -> None:
    chart = imported_chart(preview_text(TABLE, "shop list"), "Mine")
    assert (chart.labels, chart.main_measure, chart.status) == (("10", "12"), "waist_girth", "imported")
    assert chart.row("waist_girth") == (680.0, 720.0)
    assert chart.source == "imported from shop list"


def test_bodies_in_rows_are_sizes_by_their_names() -> None:
    chart = imported_chart(preview_text("Name,Bust (cm)\nSmall,84\nSize M,92\n"), "Mine")
    assert chart.labels == ("Small", "M")


@pytest.mark.parametrize(
    ("text", "name", "code"),
    [
        (TABLE.replace("72", "wide"), "Mine", "import-rows-refused"),
        (TABLE.replace(" (cm)", ""), "Mine", "import-not-ready"),
        (TABLE, "  ", "measures-name"),
        ("Name,Bust (cm)\nM,92\nSize M,96\n", "Mine", "chart-label-twice"),
    ],
)
def test_what_is_no_whole_chart_is_refused(text: str, name: str, code: str) -> None:
    with pytest.raises(InputError) as refused:
        imported_chart(preview_text(text), name)
    assert refused.value.code == code
