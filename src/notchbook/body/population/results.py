"""What a population says about a measure."""

from dataclasses import dataclass
from statistics import NormalDist

_NORMAL = NormalDist()


@dataclass(frozen=True, slots=True)
class Expected:
    """What a measure is expected to be, in mm (degrees, kg), given others of the same body.

    ``sd`` is the standard deviation of what a tape would read; ``given`` names the measures it rests on,
    strongest first, and is empty where the population alone speaks.
    """

    key: str
    value: float
    sd: float
    given: tuple[str, ...] = ()

    def half_width(self, share: float = 0.9) -> float:
        """Half the width of the interval within which this share of bodies lies (0 < share < 1)."""
        return _NORMAL.inv_cdf((1.0 + share) / 2.0) * self.sd

    def interval(self, share: float = 0.9) -> tuple[float, float]:
        """Between which values this share of bodies lies; never below 0."""
        half = self.half_width(share)
        return max(0.0, self.value - half), self.value + half


@dataclass(frozen=True, slots=True)
class Score:
    """How far a value lies from what all others of the set foretell.

    ``z`` is (value - expected) / sd. ``key`` carries a side (``hip_depth@left``) where sides were given.
    Among the values of one set the one with the largest ``|z|`` is the one that, left out, lets the rest
    agree best.
    """

    key: str
    value: float
    expected: Expected
    z: float


@dataclass(frozen=True, slots=True)
class Gain:
    """What taking a measure would do for the uncertainty of the wanted ones.

    ``before`` and ``after`` are roots of the weighted sum of variances, mm; ``share`` is the part of that
    sum of variances that goes, 0 to 1.
    """

    key: str
    before: float
    after: float
    share: float
