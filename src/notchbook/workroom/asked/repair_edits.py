"""Taking what was offered for a slip, as the page sends it."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.app.bodies import repair_edits as app
from notchbook.workroom.asked.form import Asked, Key
from notchbook.workroom.reader import Reader

Value = Annotated[float, Field(ge=0, allow_inf_nan=False)]


class RepairMeasures(Asked):
    """The values that were offered, by key, in mm, degrees or kg, just as they came; ``is_reckoned`` where
    nobody has read them anywhere."""

    do: Literal["repair-measures"]
    values: dict[Key, Value]
    is_reckoned: bool = False

    def for_app(self, _reader: Reader) -> app.RepairMeasures:
        """The edit."""
        return app.RepairMeasures(self.values, self.is_reckoned)
