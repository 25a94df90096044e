"""Filling in and refreshing estimates, as the page sends them."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.app.bodies import estimate_edits as app
from notchbook.workroom.asked.form import Asked, Key
from notchbook.workroom.reader import Reader

Keys = Annotated[tuple[Key, ...], Field(max_length=400)]


class FillEstimates(Asked):
    """Estimates for these measures, or for all that nobody took."""

    do: Literal["fill-estimates"]
    keys: Keys = ()

    def for_app(self, _reader: Reader) -> app.FillEstimates:
        """The edit."""
        return app.FillEstimates(self.keys)


class RefreshEstimates(Asked):
    """These estimates worked out anew, or all that no longer follow."""

    do: Literal["refresh-estimates"]
    keys: Keys = ()

    def for_app(self, _reader: Reader) -> app.RefreshEstimates:
        """The edit."""
        return app.RefreshEstimates(self.keys)
