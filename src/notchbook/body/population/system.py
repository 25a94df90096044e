"""The normal distribution of certain measures in one frame, and what follows from conditioning it."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from notchbook.body.measure_table import measure_entry
from notchbook.body.population.evidence import Frame
from notchbook.body.population.model import Array, Model

SURVEY_TAPE = 1.5
"""mm: what is left of a survey's value when a file rounds it, to 1/8 inch at worst (own reckoning). What the
survey's measurers scatter is in the survey's own covariance. It serves for kg too: see the tape of weight."""

DROP_TAPE = 8.0
"""mm: how surely the drop of a waist below the natural one is known (common practice, no source)."""


@dataclass(frozen=True, eq=False)
class System:
    """Measures (``keys``, in this order) as they are, and as a tape reads them.

    ``mean`` is for a drop of 0 where the waist is lower by a known drop: see :func:`level_shift`.
    ``truth`` is the covariance without the tape's scatter, ``read`` with it. Where the frame knows the
    drop of the navel, it stands behind the last key as one more value. ``bodies`` is how many the
    covariance comes from.
    """

    keys: tuple[str, ...]
    mean: Array
    truth: Array
    read: Array
    bodies: int

    @cached_property
    def precision(self) -> Array:
        """The inverse of the covariance of what is read."""
        inverse: Array = np.asarray(np.linalg.inv(self.read), dtype=np.float64)
        return (inverse + inverse.T) / 2.0

    @cached_property
    def sd_given_rest(self) -> Array:
        """SD of each value given all others."""
        sd: Array = np.sqrt(widening(self.bodies, len(self.mean) - 1) / np.diag(self.precision))
        return sd


def widening(bodies: int, given: int) -> float:
    """By what factor a variance given so many values grows, since the covariance is itself estimated.

    The variance of a forecast from least squares on n normal records is, on average,
    (1 + 1/n)(n - 2)/(n - p - 2) times the true scatter, and what is left in the records themselves is
    (n - p - 1)/(n - 1) of it (a textbook result for random regressors).
    """
    n, p = float(bodies), float(given)
    return (1.0 + 1.0 / n) * (n - 2.0) / (n - p - 2.0) * (n - 1.0) / (n - p - 1.0)


def make_system(model: Model, frame: Frame, keys: tuple[str, ...]) -> System:
    """The distribution of these measures (all known to the model) in this frame."""
    rows = [_row(model, frame, key) for key in keys]
    tape = [SURVEY_TAPE if frame.taken_as == "survey" else model.tape[key] for key in keys]
    if frame.drop_known:
        rows.append((model.drop.weights, 0.0, 0.0))
        tape.append(DROP_TAPE)
    weights = np.array([row[0] for row in rows]).reshape(len(rows), len(model.behind))
    constant = np.array([row[1] for row in rows])
    scatter = np.array([row[2] for row in rows])
    # A measure may stand twice, as it is and as it was read: its own scatter is the same both times.
    names = np.array([*keys, *([""] if frame.drop_known else [])])
    own = np.outer(scatter, scatter) * (names[:, None] == names[None, :])
    truth = weights @ model.covariance @ weights.T + own
    mean: Array = weights @ model.mean + constant
    return System(keys, mean, truth, truth + np.diag(np.array(tape) ** 2), model.size)


def _row(model: Model, frame: Frame, key: str) -> tuple[Array, float, float]:
    """Weights, constant and scatter of a measure in this frame."""
    if frame.taken_as == "survey":
        row = model.survey[key]
        return row.weights, row.constant, row.scatter
    row = model.book[key]
    shift = measure_entry(key).waist_shift
    at_waist = model.at_waist.get(key, 0.0)
    weights = row.weights.copy()
    if frame.level == "navel":
        weights += shift * model.drop.weights
        if at_waist:
            # At the navel the girth is the survey's own: nothing is added and nothing is in doubt.
            weights[model.waist_rest] = 0.0
        return weights, row.constant - at_waist, row.scatter
    weights[model.slack] += shift
    return weights, row.constant, row.scatter


def level_shift(model: Model, key: str, drop: float) -> float:
    """By how much a measure changes when the waist is tied lower by ``drop`` mm, known.

    Lengths change by the shift of the measure table; the waist girth goes over to that at the navel as the
    waist comes down to it, and on by as much again below it (own judgment).
    """
    at_waist = model.at_waist.get(key, 0.0)
    return measure_entry(key).waist_shift * drop - at_waist * min(drop / model.mean_drop, 2.0)
