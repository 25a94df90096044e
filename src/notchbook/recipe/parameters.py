"""The parameters of steps: typed, so that forms, docs and command line follow from them.

Each kind below is a text or number that is checked when a recipe is read and that says, in its
JSON schema (key ``kind``), what the workroom must offer for it.
"""

from collections.abc import Mapping
from functools import lru_cache
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, WithJsonSchema

from notchbook.body import notation_names
from notchbook.errors import InputError
from notchbook.pattern import spoken
from notchbook.pattern.names import is_name, is_slug
from notchbook.pattern.place import Place
from notchbook.units import Amount, parse_amount, parse_recovery, parse_stretch


class StepParameters(BaseModel):
    """Base of every step's parameters: frozen, and a word that it does not know is refused.

    The text below each parameter is its help in the workroom and in the docs.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", use_attribute_docstrings=True)


@lru_cache(maxsize=4096)
def read_amount(text: str) -> Amount:
    """The amount in the trade's notation; a bare number is mm in files (fields add their unit)."""
    return parse_amount(text, "mm", notation_names())


def holds_amount(field: Mapping[str, Any]) -> bool:
    """Whether a field of a parameter's JSON schema is an amount, or may be one."""
    return any(form.get("kind") == "amount" for form in (field, *field.get("anyOf", ())))


def _amount_text(value: Any) -> str:
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise InputError("parameter-not-amount", value=repr(value))
    if isinstance(value, str):
        return read_amount(value).text
    try:
        return Amount.plain(float(value)).text
    except OverflowError as error:
        raise InputError("parameter-not-amount", value="a number this large") from error


def _name_text(value: Any) -> str:
    if not isinstance(value, str) or not is_name(value):
        raise InputError("parameter-not-name", value=repr(value))
    return value


def _slug_text(value: Any) -> str:
    if not isinstance(value, str) or not is_slug(value):
        raise InputError("parameter-not-word", value=repr(value))
    return value


def _stretch_text(value: Any) -> str:
    if not isinstance(value, str):
        raise InputError("stretch-not-understood", text=repr(value), where="")
    return parse_stretch(value).text


def _recovery_text(value: Any) -> str:
    if not isinstance(value, str):
        raise InputError("recovery-not-understood", text=repr(value), where="")
    parse_recovery(value)
    return value


def _kind(kind: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "kind": kind})


AmountText = Annotated[str, BeforeValidator(_amount_text), _kind("amount")]
"""A length in the trade's notation, kept as its canonical text: ``1/4 hip + 1 cm``."""

StretchText = Annotated[str, BeforeValidator(_stretch_text), _kind("stretch")]
"""A stretch test as the hand writes it down: ``10 cm to 14 cm``, or ``40 %``."""

RecoveryText = Annotated[str, BeforeValidator(_recovery_text), _kind("recovery")]
"""How much of the stretch comes back: ``95 %``, or a whole test with its third length."""

EdgeName = Annotated[str, BeforeValidator(_name_text), _kind("edge")]
"""The name of an edge or of the group that it has become."""

LevelName = Annotated[str, BeforeValidator(_name_text), _kind("level")]
"""The name of an edge, or of a level such as the hip line."""

PointName = Annotated[str, BeforeValidator(_name_text), _kind("point")]
PieceName = Annotated[str, BeforeValidator(_name_text), _kind("piece")]
IntakeName = Annotated[str, BeforeValidator(_name_text), _kind("intake")]
InnerDartName = Annotated[str, BeforeValidator(_name_text), _kind("inner_dart")]
"""The name of a dart with two points that lies inside a piece."""

PivotName = Annotated[str, BeforeValidator(_name_text), _kind("pivot")]
"""The name of a point inside a piece that it can be turned about: the bust point, the point of a dart."""
SeamName = Annotated[str, BeforeValidator(_name_text), _kind("seam")]
NotchName = Annotated[str, BeforeValidator(_name_text), _kind("notch")]
Word = Annotated[str, BeforeValidator(_slug_text), _kind("word")]
"""A single word of a name, such as the role of a part."""

AllowanceClass = Annotated[str, BeforeValidator(_slug_text), _kind("allowance_class")]
"""A row of the house's allowance table, by its word: ``side``, ``hem_dress``."""

MaterialWord = Annotated[str, BeforeValidator(_slug_text), _kind("material")]
"""What a piece is cut in, by its word on the must: ``lining``, ``fusible``."""


class PlaceParameters(StepParameters):
    """A place along an edge or group, as sewn, from a named end.

    Give ``distance`` (an amount) or ``fraction`` (0 to 1); ``notch`` counts the distance from a
    notch on that edge instead of from the end. ``part`` names the part on which the place must lie,
    where the edge consists of several.
    """

    edge: EdgeName
    """The edge, or what it has become."""
    from_point: PointName
    """The end from which the place is counted."""
    distance: AmountText | None = None
    """How far from that end, as sewn."""
    fraction: Annotated[float, Field(ge=0.0, le=1.0)] | None = None
    """Instead of a distance: a share of the length, 0 to 1."""
    notch: NotchName | None = None
    """A notch to count the distance from, instead of the end."""
    part: EdgeName | None = None
    """The part on which the place must lie, where the edge has several."""

    def place(self, distance_mm: float | None) -> Place:
        """The place, its distance evaluated to mm by the caller."""
        if (self.fraction is None) == (distance_mm is None):
            raise InputError("place-needs-one-amount", edge=spoken(self.edge))
        if distance_mm is not None:
            return Place(self.edge, self.from_point, distance_mm, "distance", self.notch)
        return Place(self.edge, self.from_point, self.fraction or 0.0, "fraction", self.notch)


def names_in(parameters: StepParameters) -> tuple[str, ...]:
    """Every name that the parameters refer to, in the order of the fields."""
    found: list[str] = []
    for value in parameters.__dict__.values():
        found.extend(_names_of(value))
    return tuple(dict.fromkeys(found))


def _names_of(value: Any) -> list[str]:
    if isinstance(value, StepParameters):
        return list(names_in(value))
    if isinstance(value, (tuple, list)):
        return [name for part in value for name in _names_of(part)]
    return [value] if isinstance(value, str) and is_name(value) else []
