"""The base of all that the page sends."""

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

Text = Annotated[str, Field(max_length=400)]
Key = Annotated[str, Field(max_length=200)]


class Asked(BaseModel):
    """A word that it does not know is refused."""

    model_config = ConfigDict(extra="forbid")


class Expected(Asked):
    """The version that she has seen."""

    expected_version: int
