"""A collar of two layers: under and upper collar, sewn to each other round the outside and to the neck."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import EdgeUse, InternalLine, Operation, Pattern, part_name, piece_name
from notchbook.recipe import AmountText, StepContext
from notchbook.style.collars.collar_neck import CollarParameters
from notchbook.style.collars.figures import UPPER_COLLAR_TURN
from notchbook.style.collars.labels import called
from notchbook.style.collars.neck import Neck
from notchbook.style.collars.outline import CollarLines
from notchbook.style.collars.pieces import Grained, Layer, center_seam, collar_sides, layer_piece
from notchbook.style.collars.sewing import neck_notches, neck_seam, outer_seam, with_neck_sewn


class LayeredParameters(CollarParameters):
    """What every collar of two layers is asked."""

    turn: AmountText = UPPER_COLLAR_TURN.amount
    """How far the upper collar reaches beyond the undercollar, so that the seam rolls under."""
    interfaced: bool = True
    """Whether the upper collar is cut in fusible too."""
    undercollar: Annotated[Grained, called("grain of the undercollar")] = "straight"
    """Straight as the upper collar, on the fold; or on the bias, with a seam at the center back."""


@dataclass(frozen=True, slots=True)
class Layers:
    """What two layers are made of: their lines (the upper one larger by the turn), what they are called, and
    whether they are cut on the fold at the center back.

    ``encloses``: whether the allowances of the neck lie between them, as in a stand; else both are sewn to
    the neck as one. ``roll``: where it folds over, drawn on both layers; None where that is not known.
    """

    under: CollarLines
    upper: CollarLines
    word: str
    title: str
    encloses: bool = True
    parted: bool = False
    roll: Path | None = None


def turn_within(context: StepContext, asked: str, width: float) -> float:
    """The turn of the cloth, mm, of a collar so wide; StepRefused ``turn-out-of-range``."""
    turn = context.mm(asked)
    if not 0.0 <= turn <= width / 4.0:
        raise StepRefused("turn-out-of-range", turn=turn, depth=width)
    return turn


def with_two_layers(neck: Neck, slug: str, layers: Layers, parameters: LayeredParameters) -> Pattern:
    """The pattern with both layers cut and sewn to the neck."""
    is_bias = parameters.undercollar == "bias" or layers.parted
    under_name, upper_name = "undercollar", layers.word
    fusible = ("self", "fusible") if parameters.interfaced else ("self",)
    under = layer_piece(
        slug,
        Layer(
            under_name,
            "Undercollar",
            grain=parameters.undercollar,
            on_fold=not is_bias,
        ),
        collar_sides(layers.under, on_fold=not is_bias),
        _roll_line(slug, under_name, layers.roll),
    )
    upper = layer_piece(
        slug,
        Layer(upper_name, layers.title, fusible, reflected=True, on_fold=not layers.parted),
        collar_sides(layers.upper, on_fold=not layers.parted),
        _roll_line(slug, upper_name, layers.roll),
    )
    after = with_neck_sewn(neck.pattern, neck).with_pieces(under, upper)
    after = _sewn(after, neck, slug, (under.name, upper.name), layers)
    if is_bias and not layers.parted:
        after = after.with_seams(center_seam(slug, under.name, "nape"))
    if parameters.interfaced:
        after = after.with_materials({"fusible": "fusible"})
    return after


def _roll_line(slug: str, word: str, roll: Path | None) -> tuple[InternalLine, ...]:
    if roll is None:
        return ()
    return (InternalLine(part_name(piece_name(slug, word), "roll_line"), roll, "roll_line"),)


def _sewn(after: Pattern, neck: Neck, slug: str, pieces: tuple[str, str], layers: Layers) -> Pattern:
    run = outer_run(layers)
    for piece, word, seam in ((pieces[0], "neck", part_name(slug, "neck")), (pieces[1], "upper_neck", None)):
        own = (EdgeUse(part_name(piece, "neck_edge"), part_name(piece, "neck_end")),)
        after = after.with_seams(neck_seam(slug, word, own, neck))
        after = after.with_notches(*neck_notches(after, own, neck, seam))
    outer = outer_seam(after, slug, pieces, run)
    turned = Operation(
        part_name(slug, "turned"),
        "prepare",
        "Trim and turn the collar, roll its seam to the undercollar and press.",
        at=pieces,
        after=(outer.name,),
    )
    neck_told = _enclosed(slug, pieces) if layers.encloses else _basted(slug, pieces)
    return after.with_seams(outer).with_operations(turned, neck_told)


def _enclosed(slug: str, pieces: tuple[str, str]) -> Operation:
    """The upper layer closed over the allowances of the neck (common practice, no source)."""
    text = (
        "Turn the collar up, fold the neck edge of its upper layer in and stitch it down over the neck seam."
    )
    return Operation(part_name(slug, "closed"), "neck", text, pieces, (part_name(slug, "neck"),))


def _basted(slug: str, pieces: tuple[str, str]) -> Operation:
    """Both layers made one: a collar that lies flat has no room for allowances in it (common practice, no
    source)."""
    text = (
        "Baste the layers of the collar together at the neck edge: they are sewn to the neck as one, under a "
        "facing or a bias strip that is turned in."
    )
    return Operation(part_name(slug, "basted"), "prepare", text, pieces, (part_name(slug, "turned"),))


def outer_run(layers: Layers) -> Sequence[tuple[str, str]]:
    """The edges that are turned, each with the corner where it is come to from the front."""
    is_round = layers.under.end is None
    run = [("outer", "neck_end")] if is_round else [("end", "neck_end"), ("outer", "collar_point")]
    return [*run, ("center_back", "outer_center")] if layers.parted else run
