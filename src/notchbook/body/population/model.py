"""The numbers of a population: what is behind the measures, and how each measure hangs on it."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from importlib.resources import files
from typing import Any

import numpy as np
import numpy.typing as npt

from notchbook.body.measure_set import PopulationName

Array = npt.NDArray[np.float64]

SLACK = "waist_slack"
"""How far below the level of the standard this body's natural waist was taped, mm."""

WAIST_REST = "waist_girth_rest"
"""What of the girth of the natural waist does not follow from the girth at the navel, mm."""


@dataclass(frozen=True, slots=True, eq=False)
class Row:
    """A measure as a weighted sum of what is behind, plus a constant and a scatter of its own (SD)."""

    weights: Array
    constant: float
    scatter: float


@dataclass(frozen=True, eq=False)
class Model:
    """A multivariate normal distribution and the rows that make measures of it.

    ``behind`` names the quantities behind the measures (columns of the survey and residuals), with their
    ``mean`` and ``covariance``. ``book`` gives each measure at the natural waist, as this book defines it;
    ``survey`` as the survey took it, at the navel. ``drop`` is the row of the drop from the natural waist
    to the navel. ``tape`` is the SD of one reading. ``at_waist`` is what the waist girth loses from the
    navel to the natural waist. ``stops`` gives the limit ``stop`` by how many values a record has.
    """

    name: PopulationName
    words: str
    size: int
    look_again: float
    stop: float
    stops: Mapping[int, float]
    behind: tuple[str, ...]
    mean: Array
    covariance: Array
    book: Mapping[str, Row]
    survey: Mapping[str, Row]
    tape: Mapping[str, float]
    at_waist: Mapping[str, float]
    drop: Row

    @cached_property
    def mean_drop(self) -> float:
        """mm from the natural waist to the navel, on average."""
        return float(self.drop.weights @ self.mean)

    @cached_property
    def slack(self) -> int:
        """Place of the slack of the waist level among what is behind."""
        return self.behind.index(SLACK)

    @cached_property
    def waist_rest(self) -> int:
        """Place of the rest of the waist girth among what is behind."""
        return self.behind.index(WAIST_REST)


def shipped_model(name: PopulationName) -> Model:
    """The model that comes with the program."""
    text = files("notchbook.body.population").joinpath(f"{name}.json").read_text(encoding="utf-8")
    return model_from_data(json.loads(text))


def model_from_data(data: Mapping[str, Any]) -> Model:
    """The model that the data of tools/make_population.py describes."""
    behind = tuple(data["behind"])
    size = len(behind)
    covariance = np.zeros((size, size))
    covariance[np.tril_indices(size)] = [value for line in data["covariance"] for value in line]
    covariance += np.tril(covariance, -1).T
    measures: Mapping[str, Any] = data["measures"]
    return Model(
        name=data["name"],
        words=data["words"],
        size=data["size"],
        look_again=data["look_again"],
        stop=data["stop"],
        stops={int(count): limit for count, limit in data["stops"].items()},
        behind=behind,
        mean=np.array(data["mean"], dtype=np.float64),
        covariance=covariance,
        book={key: _row(one["book"], behind) for key, one in measures.items()},
        survey={key: _row(one["survey"], behind) for key, one in measures.items() if "survey" in one},
        tape={key: one["tape"] for key, one in measures.items()},
        at_waist={key: one["at_waist"] for key, one in measures.items() if "at_waist" in one},
        drop=_row(data["drop"], behind),
    )


def _row(data: Mapping[str, Any], behind: tuple[str, ...]) -> Row:
    weights = np.zeros(len(behind))
    for name, weight in data["weights"].items():
        weights[behind.index(name)] = weight
    return Row(weights, data.get("constant", 0.0), data.get("scatter", 0.0))
