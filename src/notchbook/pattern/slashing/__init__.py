"""The slash engine: a piece divided by cuts, its parts moved, the outline put together again.

``cuts`` says what is cut, ``dividing`` finds the parts, ``assembling`` lays them together anew;
``pivoting`` turns parts about one point, which is how a dart goes from one place to another.
"""

from notchbook.pattern.slashing.applying import applied
from notchbook.pattern.slashing.assembling import (
    Assembled,
    Bridge,
    Filling,
    Fillings,
    Fold,
    Keep,
    Legs,
    Shut,
    assemble,
)
from notchbook.pattern.slashing.chaining import chained
from notchbook.pattern.slashing.cuts import (
    Cut,
    DartCut,
    Slash,
    Wedge,
    dart_cut,
    located_on,
    slash_across,
    slash_along,
    slash_to,
)
from notchbook.pattern.slashing.dividing import Division, divide
from notchbook.pattern.slashing.naming import DartNames
from notchbook.pattern.slashing.pivoting import Closing, Opening, pivot, turned_about
from notchbook.pattern.slashing.pointing import dart_angle, middle_of_mouth, with_point
from notchbook.pattern.slashing.truing import TruedMouth, true_joint, true_mouth, trued_mouth

__all__ = [
    "Assembled",
    "Bridge",
    "Closing",
    "Cut",
    "DartCut",
    "DartNames",
    "Division",
    "Filling",
    "Fillings",
    "Fold",
    "Keep",
    "Legs",
    "Opening",
    "Shut",
    "Slash",
    "TruedMouth",
    "Wedge",
    "applied",
    "assemble",
    "chained",
    "dart_angle",
    "dart_cut",
    "divide",
    "located_on",
    "middle_of_mouth",
    "pivot",
    "slash_across",
    "slash_along",
    "slash_to",
    "true_joint",
    "true_mouth",
    "trued_mouth",
    "turned_about",
    "with_point",
]
