"""The base of every answer."""

from pydantic import BaseModel, ConfigDict


class Answer(BaseModel):
    """Frozen, and every field is always there, so that the page's types need no guesses."""

    model_config = ConfigDict(frozen=True, extra="forbid", json_schema_serialization_defaults_required=True)


class At(Answer):
    """A place in the frame of a piece, mm, y up."""

    x: float
    y: float


class Named(Answer):
    """A name of the pattern and how it is said."""

    name: str
    said: str
