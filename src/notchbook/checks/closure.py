"""What a closure is: something that must come out on the finished outline, and what comes out."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Literal, cast, get_args

from notchbook.errors import InputError

ClosureKind = Literal["length", "angle", "shape"]
"""A length on the sew line; an angle where lines meet; how a curve is shaped."""

ClosureUnit = Literal["mm", "deg", ""]


@dataclass(frozen=True, slots=True)
class Closure:
    """One closure: ``name`` says of what, ``where`` the edges, points or darts that it was measured on.

    ``measured`` and ``wanted`` are mm, or degrees where ``unit`` is "deg", or a share where it is "".
    They agree ``within`` so much.
    """

    name: str
    kind: ClosureKind
    where: tuple[str, ...]
    measured: float
    wanted: float
    within: float
    unit: ClosureUnit = "mm"

    @property
    def misfit(self) -> float:
        """How far it is off, in its unit."""
        return self.measured - self.wanted

    @property
    def agrees(self) -> bool:
        """Whether it comes out."""
        return abs(self.misfit) <= self.within


def closures_data(closures: Iterable[Closure]) -> list[dict[str, Any]]:
    """The closures as JSON-ready data, rounded to a millionth."""
    return [
        {
            "name": one.name,
            "kind": one.kind,
            "where": list(one.where),
            "measured": round(one.measured, 6),
            "wanted": round(one.wanted, 6),
            "within": one.within,
            "unit": one.unit,
            "agrees": one.agrees,
        }
        for one in closures
    ]


def closures_from_data(data: object) -> tuple[Closure, ...]:
    """The closures that were stored; InputError ``closures-damaged`` when they are not that."""
    if not isinstance(data, list):
        raise InputError("closures-damaged", detail="a list was expected")
    try:
        return tuple(_closure(row) for row in data)
    except KeyError as error:
        raise InputError("closures-damaged", detail=f"{error} is missing") from error
    except (TypeError, ValueError) as error:
        raise InputError("closures-damaged", detail=str(error)) from error


def _closure(row: dict[str, Any]) -> Closure:
    kind, unit, where = row["kind"], row["unit"], row["where"]
    if kind not in get_args(ClosureKind) or unit not in get_args(ClosureUnit):
        raise ValueError(f"no closure is a {kind!r} in {unit!r}")
    words = (row["name"], *where)
    if not isinstance(where, list) or not all(isinstance(word, str) for word in words):
        raise TypeError("a name is no text")
    measured, wanted, within = (_number(row[key]) for key in ("measured", "wanted", "within"))
    return Closure(
        words[0], cast(ClosureKind, kind), words[1:], measured, wanted, within, cast(ClosureUnit, unit)
    )


def _number(found: object) -> float:
    if isinstance(found, bool) or not isinstance(found, (int, float)) or not math.isfinite(found):
        raise TypeError(f"{found!r} is no number")
    return float(found)
