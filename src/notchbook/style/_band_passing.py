"""How a banded garment is put on: what must pass the band, and whether band and cloth stretch so far."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from notchbook.body import measure_entry
from notchbook.body.doubts.child import is_child
from notchbook.body.usual_head import USUAL_CHILD_HEAD, USUAL_HEAD
from notchbook.pattern import Cure, Finding, Measured, Severity, worded
from notchbook.recipe import StepContext
from notchbook.units import stretch_needed

CHECK = "stretch-band"

PutOn = Literal["over_head", "stepped_into", "opening"]
Passing = Literal["auto", "head", "bust", "hip", "hand", "heel", "thigh", "upper_arm", "nothing"]

_OVER_HEAD: dict[str, Passing] = {"neck": "head", "hem": "bust", "waist": "bust"}
_STEPPED_INTO: dict[str, Passing] = {"neck": "hip", "hem": "hip", "waist": "hip"}
_LIMBS: dict[str, Passing] = {"leg_opening": "thigh", "armhole": "upper_arm"}
"""What passes which opening, by the word of its edge."""


@dataclass(frozen=True, slots=True)
class BandAsked:
    """What is looked at: the finished ``length`` of band and ``opening``, mm, how far band and cloth stretch
    (None: not tested), its material and words."""

    slug: str
    piece: str
    where: str
    length: float
    opening: float
    band_stretch: float
    cloth_stretch: float | None
    material: str


def passing(word: str, piece_word: str, put_on: PutOn) -> Passing:
    """What must pass an opening of this word on a piece of that word."""
    if put_on == "opening" and word not in _LIMBS:
        return "nothing"
    if word == "hem" and piece_word == "sleeve":
        return "hand"
    if word == "hem" and piece_word == "leg":
        return "heel"
    if word == "waist" and piece_word == "leg":
        return "hip"
    if word in _LIMBS:
        return _LIMBS[word]
    return (_OVER_HEAD if put_on == "over_head" else _STEPPED_INTO).get(word, "nothing")


def passing_girth(context: StepContext, what: Passing) -> float | None:
    """The girth that must pass, mm; None where it was not measured. A head that was not is taken as usual, a
    child's as that of a child."""
    if what in ("auto", "nothing"):
        return None
    found = context.find(f"{what}_girth")
    if found is not None or what != "head":
        return found
    return USUAL_CHILD_HEAD if is_child(context.measures) else USUAL_HEAD


def passing_notes(asked: BandAsked, what: Passing, girth: float | None) -> Iterator[Finding]:
    """The band, then the cloth of the opening, where what must pass does not."""
    if girth is None:
        return
    said = f"the {measure_entry(f'{what}_girth').label.lower().removesuffix(' girth')}"
    needed = stretch_needed(asked.length, girth)
    if needed > asked.band_stretch:
        yield worded(
            CHECK,
            "band-does-not-pass",
            Severity.LOOK,
            Measured(asked.length, girth / (1.0 + asked.band_stretch)),
            piece=asked.piece,
            where=asked.where,
            what=said,
            needed=100.0 * needed,
            stretch=100.0 * asked.band_stretch,
            material=asked.material,
            cures=_cures(asked, girth),
        )
    cloth = stretch_needed(asked.opening, girth)
    if asked.cloth_stretch is not None and cloth > asked.cloth_stretch:
        yield worded(
            CHECK,
            "opening-does-not-pass",
            Severity.LOOK,
            Measured(asked.opening, girth / (1.0 + asked.cloth_stretch)),
            piece=asked.piece,
            where=asked.where,
            what=said,
            needed=100.0 * cloth,
            stretch=100.0 * asked.cloth_stretch,
        )


def _cures(asked: BandAsked, girth: float) -> tuple[Cure, ...]:
    """A longer band, where one no longer than its opening passes; a garment with an opening."""
    least = math.ceil(100.0 * girth / (1.0 + asked.band_stretch) / asked.opening) / 100.0
    found = [Cure(asked.slug, "put_on", "opening", "give the garment an opening")]
    if least <= 1.0:
        found.insert(
            0, Cure(asked.slug, "share", least, f"cut the band to {100.0 * least:.0f} % of its opening")
        )
    return tuple(found)
