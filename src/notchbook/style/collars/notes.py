"""What is said of a collar: how it stands, whether it covers its seam, its outer edge."""

from collections.abc import Iterator, Mapping

from notchbook.pattern import Cure, Finding, Measured, Severity, worded
from notchbook.recipe import StepContext
from notchbook.recipe.style_figure import RangedFigure
from notchbook.style.closures.within_trade import told_outside
from notchbook.style.collars.figures import FALL_OVER_STAND, NECK_EASE, OUTER_EDGE_SHORT
from notchbook.style.collars.laid_neck import LaidNeck
from notchbook.units import TOLERANCES

CHECK = "collar"


def resulting_stand(laid: LaidNeck, parallel: float, width: float) -> float:
    """How high a collar stands by itself, mm.

    Its outer edge, ``parallel`` mm long at ``width`` mm from the neck edge, sinks to where the garment is as
    long. What does not lie there stands and folds over: twice the stand. The length of a parallel grows
    evenly with its distance, so that one measure tells where.
    """
    neck = laid.path.length
    grown = laid.girth(width) - neck
    if grown <= 0.0:
        return 0.0
    lies_at = width * max(parallel - neck, 0.0) / grown
    return max(0.0, (width - lies_at) / 2.0)


def unusual_notes(piece: str, asked: Mapping[str, tuple[float, RangedFigure]]) -> Iterator[Finding]:
    """Amounts outside of what is usual, drawn as asked; ``asked``: by field, the amount in mm, its figure."""
    for field, (value, figure) in asked.items():
        yield from told_outside(piece, field, value, figure, check=CHECK)


def stand_note(piece: str, stand: float, width: float) -> Finding:
    """Tells how high it stands and how far it falls."""
    return worded(
        CHECK, "collar-stands", Severity.NOTE, Measured(stand, None), piece=piece, stand=stand, width=width
    )


def outer_edge_notes(
    slug: str, piece: str, laid: LaidNeck | None, outer: float, lies_at: float
) -> Iterator[Finding]:
    """An outer edge that is shorter than the garment where it lies: it draws the garment up."""
    if laid is None or lies_at <= 0.0:
        return
    wanted = laid.girth(lies_at)
    if outer >= wanted - OUTER_EDGE_SHORT.value - TOLERANCES.closure:
        return
    yield worded(
        CHECK,
        "collar-outer-short",
        Severity.LOOK,
        Measured(outer, wanted),
        piece=piece,
        length=outer,
        wanted=wanted,
        lies=lies_at,
        cures=(Cure(slug, "drop", None, "bend its inner edge as far as its outer edge asks"),),
    )


def neck_tight_notes(piece: str, context: StepContext, top: float) -> Iterator[Finding]:
    """A closed stand whose upper edge is too short for the neck; nothing where the neck was not measured."""
    girth = context.find("neck_girth", "both")
    if girth is None:
        return
    least = girth + NECK_EASE.value
    if 2.0 * top >= least:
        return
    yield worded(
        CHECK,
        "collar-stand-tight",
        Severity.LOOK,
        Measured(2.0 * top, least),
        piece=piece,
        length=2.0 * top,
        neck=girth,
        least=least,
    )


def cover_notes(slug: str, piece: str, stand: float, fall: float) -> Iterator[Finding]:
    """A fall that does not reach over the neck seam as far as is usual."""
    least = stand + FALL_OVER_STAND.value
    if fall >= least - TOLERANCES.closure:
        return
    cure = Cure(slug, "fall", f"{least:g} mm", f"make the fall {least:.1f} mm wide")
    yield worded(
        CHECK,
        "collar-shows-seam",
        Severity.LOOK,
        Measured(fall, least),
        piece=piece,
        fall=fall,
        stand=stand,
        least=least,
        cures=(cure,),
    )
