"""A contradiction: two measures that cannot both be right, and the one value that explains both."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Two measures of a body that disagree, by their keys.

    ``explains`` is the key of the measure that would make both agree and ``value`` what it would be (mm;
    degrees for an angle), ``by`` how far that is from what was given. ``read_again`` is the key of the
    measure whose second reading decides; ``question`` the code of the question that is due (such as
    ``measure-to-which-waist``), empty where there is none.
    """

    first: str
    second: str
    explains: str
    value: float
    by: float
    read_again: str
    question: str = ""
