"""With which stitches a garment is sewn, of which classes its seams are, and how a cloth that stretches is
laid, for whoever cuts and sews it elsewhere."""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from notchbook.pattern import Pattern
from notchbook.units import LengthStyle


@dataclass(frozen=True, slots=True)
class Stitch:
    """A type of stitch: its number in ISO 4915 (ASTM D6193 has the same), its name, and from how many to how
    many go into a centimeter and into an inch; source and grade as of a row of the house table."""

    number: str
    name: str
    per_cm: tuple[float, float]
    per_inch: tuple[int, int]
    source: str
    grade: str

    def words(self, style: LengthStyle) -> str:
        """``stitch 301, lockstitch, 4 to 5 per cm``."""
        least, most = self.per_inch if style.unit == "in" else self.per_cm
        each = "in" if style.unit == "in" else "cm"
        return f"stitch {self.number}, {self.name}, {least:g} to {most:g} per {each}"


WOVEN: Final = Stitch(
    "301",
    "lockstitch",
    (4.0, 5.0),
    (10, 12),
    "ISO 4915; medium woven cloth 10 to 12 in an inch",
    "common practice",
)
STRETCH: Final = Stitch(
    "514",
    "four-thread overlock",
    (4.0, 5.0),
    (10, 12),
    "ISO 4915; knits 10 to 12 in an inch",
    "common practice",
)
STRETCH_HEM: Final = Stitch(
    "406", "two-needle cover stitch", (4.0, 5.0), (10, 12), "ISO 4915; hems of knits", "common practice"
)
ZIGZAG: Final = Stitch(
    "304", "zigzag", (4.0, 5.0), (10, 12), "ISO 4915; elastics and underwear", "common practice"
)
LEATHER: Final = Stitch(
    "301",
    "lockstitch",
    (2.5, 3.5),
    (6, 9),
    "ISO 4915; long stitches, for a row of close holes tears like a stamp",
    "common practice",
)

SEAM_CLASSES: Final = MappingProxyType(
    {
        "SSa": ("1.01.01", "plain"),
        "SSe": ("1.06.02", "turned"),
        "LSa": ("2.01.01", "lapped"),
        "BSc": ("3.05.01", "bound"),
    }
)
"""Number in ISO 4916 and name of each seam class that a seam may have (codes of ASTM D6193). From memory."""


def stitches(pattern: Pattern, style: LengthStyle) -> tuple[str, ...]:
    """The stitch and the classes of the seams that there are; of a cloth that stretches also with what its
    hems are sewn, which have to give as it does. Nothing where nothing is sewn."""
    if not pattern.seams:
        return ()
    used = {seam.seam_class for seam in pattern.seams.values()}
    classes = sorted(SEAM_CLASSES.get(one, (one, "")) for one in used)
    told = ", ".join(f"{number} {name}".strip() for number, name in classes)
    stitch = _stitch(pattern)
    sewn = f"Seams: {stitch.words(style)}; seam classes {told} (ISO 4915, ISO 4916)."
    if stitch is not STRETCH:
        return (sewn,)
    return (sewn, f"Hems and elastics: {STRETCH_HEM.words(style)}; or {ZIGZAG.number}, {ZIGZAG.name}.")


def stretch_notes(pattern: Pattern) -> tuple[str, ...]:
    """How a cloth that stretches is laid; nothing of any other."""
    if _stitch(pattern) is not STRETCH:
        return ()
    return ("Lay the greatest stretch of the cloth across the grain line: it goes round the body.",)


def _stitch(pattern: Pattern) -> Stitch:
    if pattern.making is not None:
        return LEATHER
    return STRETCH if any(piece.stretches for piece in pattern.pieces.values()) else WOVEN
