"""Which chart a style is to be checked against."""

from notchbook.app.studio import Studio
from notchbook.body import PopulationName
from notchbook.body.charts import SizeChart, shipped_chart
from notchbook.errors import InputError
from notchbook.workroom.asked.form import Asked


class ChartChoice(Asked):
    """A chart that comes with the program, or one of hers by its number; exactly one of the two."""

    computed: PopulationName | None = None
    chart: int | None = None

    def for_app(self, studio: Studio) -> SizeChart:
        """The chart; InputError ``size-check-no-chart`` or ``size-check-no-sizes``."""
        if self.chart is not None:
            found = studio.open_chart(self.chart).chart
        elif self.computed is not None:
            found = shipped_chart(self.computed)
        else:
            raise InputError("size-check-no-chart")
        if not found.labels:
            raise InputError("size-check-no-sizes", chart=found.name)
        return found
