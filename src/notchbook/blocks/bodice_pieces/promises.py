"""What the finished bodice must measure: every girth and length that it was drafted from.

What is promised is what was asked for: the measure with its ease, and by how much a lever that the draft
speaks of gave way. Never what came out: a promise made of that could not be broken.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.below_waist import HipHalf
from notchbook.blocks.bodice_pieces.bodice_measures import BodiceMeasures
from notchbook.blocks.bodice_pieces.dart_places import DartPlace
from notchbook.blocks.bodice_pieces.front_panel import WAIST_UNDER_BUST
from notchbook.blocks.bodice_pieces.outline import DrawnPiece
from notchbook.blocks.upper.shapes import BodiceHalf
from notchbook.pattern import Expectation, part_name

_LENGTH_IN_WEAR = "this length lies on the body from point to point"


@dataclass(frozen=True)
class Drafted:
    """What the promises speak of: the drafted side, what it was drafted from, and its pieces. ``hip`` is
    there where the bodice goes on below the waist. ``bust_dart`` is where the bust dart opens, None without
    bust shaping."""

    names: PanelNames
    half: BodiceHalf
    measures: BodiceMeasures
    front: DrawnPiece
    back: DrawnPiece
    hip: HipHalf | None = None
    bust_dart: DartPlace | None = None


def promises(drafted: Drafted) -> tuple[Expectation, ...]:
    """All closures of the block."""
    return (
        *_girths(drafted),
        *_widths(drafted),
        *_lengths(drafted),
        *_bust(drafted),
        *_upper_bust(drafted),
    )


def _girths(drafted: Drafted) -> Iterator[Expectation]:
    given = drafted.measures.given
    neck = (_front(drafted, "neck"), _back(drafted, "neck"))
    bust_lines = (*_lines(drafted.front, "bust_line"), *_lines(drafted.back, "bust_line"))
    yield _girth(drafted, "bust", bust_lines, given.bust, "the bodice must close over the bust with its ease")
    yield _waist(drafted)
    yield _girth(drafted, "neck_base", neck, given.neck, "the sewn neck lies round the neck base")
    asked = drafted.measures.hip
    if drafted.hip is not None and asked is not None:
        lines = (*_lines(drafted.front, "hip_line"), *_lines(drafted.back, "hip_line"))
        yield _girth(drafted, "hip", lines, asked.hip, "the bodice must pass over the hip with its ease")


def _waist(drafted: Drafted) -> Expectation:
    """The waist as sewn; where it is left as it falls, what the numbers say that it falls to."""
    half, hip = drafted.half, drafted.hip
    names: tuple[str, ...] = (_front(drafted, "waist"), _back(drafted, "waist"))
    fallen = half.fallen_waist or 0.0
    if hip is not None:
        names = (*_lines(drafted.front, "waist_line"), *_lines(drafted.back, "waist_line"))
        fallen += 2.0 * hip.rounding
    waist = drafted.measures.given.waist
    reason = "the sewn waist sits on the body's with its ease"
    return _girth(drafted, "waist", names, fallen if waist is None else waist, reason)


def _girth(drafted: Drafted, of: str, names: tuple[str, ...], wanted: float, reason: str) -> Expectation:
    key = f"{of}_girth"
    ease = drafted.measures.eases["neck" if of == "neck_base" else of]
    body = drafted.measures.body[key]
    return Expectation(
        drafted.names.whole(key),
        key,
        names,
        2,
        body,
        wanted - body,
        reason,
        usual_ease=ease.usual,
    )


def _widths(drafted: Drafted) -> Iterator[Expectation]:
    given = drafted.measures.given
    for which, asked, drawn in (
        ("across_back", given.across_back, drafted.back),
        ("across_chest", given.across_chest, drafted.front),
    ):
        body = drafted.measures.body[which]
        yield Expectation(
            drafted.names.whole(which),
            which,
            _lines(drawn, f"{which}_line"),
            2,
            body,
            asked + _pulled(drafted, which) - body,
            "the arm needs this width to move",
            usual_ease=drafted.measures.eases[which].usual,
            kind="length",
        )


def _lengths(drafted: Drafted) -> Iterator[Expectation]:
    given, body = drafted.measures.given, drafted.measures.body
    yield _center(drafted, "back", "nape", "back_waist_length", given.back_length)
    shoulder = given.shoulder + _pulled(drafted, "shoulder")
    yield _length(drafted, "shoulder_length", (_front(drafted, "shoulder"),), shoulder)
    scye = (_back(drafted, "nape"), _back(drafted, "underarm"))
    yield Expectation(
        drafted.names.whole("scye_depth"),
        "scye_depth",
        (),
        1,
        body["scye_depth"],
        given.scye_depth - body["scye_depth"],
        "the underarm lies so far below the arm",
        usual_ease=drafted.measures.eases["scye"].usual,
        kind="length",
        chains=(scye,),
        reach="down",
    )
    key = "center_front_length"
    if key in body:
        asked = drafted.measures.trusted.value(key, body[key]) - given.pit_lowered
        yield _center(drafted, "front", "neck_pit", key, asked + _pulled(drafted, "center_front"))


def _pulled(drafted: Drafted, name: str) -> float:
    """By how much a measure gave way, mm: what the draft says of the lever of this name."""
    return next((lever.pulled for lever in drafted.half.levers if lever.name == name), 0.0)


def _center(drafted: Drafted, which: str, top: str, key: str, wanted: float) -> Expectation:
    """A center from the neck to the waist: its edge, or where that runs on, from point to point."""
    piece = drafted.names.piece(which)
    if drafted.hip is None:
        return _length(drafted, key, (part_name(piece, f"center_{which}"),), wanted)
    ends = (part_name(piece, top), part_name(piece, "waist_center"))
    carrier = drafted.front.piece if which == "front" else drafted.back.piece
    darts = [one.name for one in carrier.intakes if one.mouth == part_name(piece, f"center_{which}")]
    stops = [part_name(dart, mouth) for dart in darts for mouth in ("upper_mouth", "lower_mouth")]
    chains = ((ends[0], stops[0]), (stops[1], ends[1])) if stops else (ends,)
    return replace(_chain(drafted, key, ends, wanted), chains=chains)


def _bust(drafted: Drafted) -> Iterator[Expectation]:
    """The lengths over the bust point, where there is bust shaping."""
    shape = drafted.measures.given.bust_shape
    if shape is None:
        return
    neck, bust, center = (_front(drafted, word) for word in ("side_neck_point", "bust_point", "waist_center"))
    yield _chain(drafted, "neck_to_bust_point", (neck, bust), shape.neck_to_bust_point)
    foot = _center_mouth(drafted) or _front(drafted, WAIST_UNDER_BUST)
    yield _chain(drafted, "front_waist_length", (neck, bust, foot), shape.front_length)
    body = drafted.measures.body["bust_point_width"]
    yield Expectation(
        drafted.names.whole("bust_point_width"),
        "bust_point_width",
        (),
        2,
        body,
        shape.point_width - body,
        _LENGTH_IN_WEAR,
        kind="length",
        chains=((center, bust),),
        reach="across",
    )


def _upper_bust(drafted: Drafted) -> Iterator[Expectation]:
    """The width under the arms with the bust dart closed, where the upper bust was measured.

    Told where the front's underarm lies as with the dart closed: the whole dart opens below it.
    """
    opened_below = ("side", "underarm", "french", "waist")
    over = next((one.pulled for one in drafted.half.levers if one.name == "upper_bust"), None)
    neck = _front(drafted, "neck")
    has_contour = any(intake.mouth == neck for intake in drafted.front.piece.intakes)
    if over is None or has_contour or drafted.bust_dart not in opened_below:
        return
    body = drafted.measures.body["upper_bust_girth"]
    wanted = (drafted.measures.given.upper_bust or 0.0) + over
    yield Expectation(
        drafted.names.whole("upper_bust_girth"),
        "upper_bust_girth",
        (),
        2,
        body,
        wanted - body,
        "under the arms the bodice is so wide with its bust dart closed",
        chains=tuple(
            (of(drafted, top), of(drafted, "underarm")) for of, top in ((_front, "neck_pit"), (_back, "nape"))
        ),
        reach="across",
    )


def _center_mouth(drafted: Drafted) -> str | None:
    """Where the leg of the first waist dart nearer to the center meets the waist; None without a dart."""
    piece = drafted.front.piece
    waist = _front(drafted, "waist")
    darts = [intake.name for intake in piece.intakes if intake.mouth == waist]
    mouths = [
        part_name(name, "center_mouth") for name in (*darts, *(dart.name for dart in piece.inner_darts))
    ]
    return min(mouths, key=lambda name: abs(piece.points[name].x), default=None)


def _length(drafted: Drafted, key: str, names: tuple[str, ...], wanted: float) -> Expectation:
    body = drafted.measures.body[key]
    return Expectation(
        drafted.names.whole(key),
        key,
        names,
        1,
        body,
        wanted - body,
        _LENGTH_IN_WEAR,
        kind="length",
    )


def _chain(drafted: Drafted, key: str, chain: tuple[str, ...], wanted: float) -> Expectation:
    body = drafted.measures.body[key]
    return Expectation(
        drafted.names.whole(key),
        key,
        (),
        1,
        body,
        wanted - body,
        _LENGTH_IN_WEAR,
        kind="length",
        chains=(chain,),
    )


def _lines(drawn: DrawnPiece, word: str) -> tuple[str, ...]:
    """The names of a level's lines on a piece."""
    whole = part_name(drawn.piece.name, word)
    return tuple(
        line.name for line in drawn.piece.lines if line.name == whole or line.name.startswith(f"{whole}/")
    )


def _front(drafted: Drafted, word: str) -> str:
    return drafted.names.at("front", word)


def _back(drafted: Drafted, word: str) -> str:
    return drafted.names.at("back", word)
