"""One invented style on paper, for the tests of output."""

from functools import cache

from notchbook.finish import CutPiece, finish, production_table
from notchbook.output import PaperInfo
from notchbook.output.paper_info import PaperTrim
from notchbook.units import LengthStyle
from support.hand_skirt import hand_skirt

INFO = PaperInfo(
    style_number="S-104",
    title="Straight skirt",
    revision="C",
    date="12 March 2031",
    size="38",
    maker="I. Varga (invented)",
    materials={"self": "wool crepe, 150 cm"},
    trims=(PaperTrim("invisible zip 20 cm, 1"), PaperTrim("hook and eye, 1")),
    notes=("Press darts toward the center.",),
    lengths=LengthStyle("in"),
)


@cache
def skirt_pieces() -> tuple[CutPiece, ...]:
    """The hand-made skirt, cut-ready."""
    return finish(hand_skirt(), production_table())
