"""What the finished trousers must measure: every girth and length that they were drafted from.

What is promised is what was asked for: the measure with its ease, and by how much a lever that the draft
speaks of gave way. Never what came out: a promise made of that could not be broken.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.shapes import TrousersHalf
from notchbook.blocks.trouser_pieces.outline import HIP_CENTER, HIP_SIDE
from notchbook.blocks.trouser_pieces.trouser_measures import TrouserMeasures
from notchbook.pattern import Expectation

_PANELS = ("front", "back")

_SHARED = "both legs are sewn into one crotch seam: the mean of what each would have alone"
"""Why a leg has another crotch seam than its own measures ask for."""


@dataclass(frozen=True)
class Drafted:
    """What the promises and notes speak of: the drafted leg, and what it was drafted from.

    ``given`` are the numbers as they run from the upper edge, wherever that lies; ``measures.given`` run from
    the waist. ``notches`` is how far from the crotch point the notches of the front and the back crotch seam
    lie, mm: where the curve begins, and on both legs alike. ``shared`` is by how much the front and the back
    crotch seam that two differing legs share are longer than this leg alone would have them, mm: ``given``
    then holds the shared ones.
    """

    names: PanelNames
    half: TrousersHalf
    given: TrousersGiven
    measures: TrouserMeasures
    notches: tuple[float, float]
    shared: tuple[float, float] = (0.0, 0.0)

    @property
    def is_dropped(self) -> bool:
        """Whether the upper edge lies below the waist as it was measured."""
        return self.measures.drop > 0.0

    def pulled(self, name: str) -> float:
        """By how much a girth gave way, mm: what the draft says of the lever of this name."""
        return next((lever.pulled - lever.usual for lever in self.half.levers if lever.name == name), 0.0)


def promises(drafted: Drafted) -> tuple[Expectation, ...]:
    """All closures of the block."""
    return (*_girths(drafted), *_crotch(drafted), *_lengths(drafted), *_legs(drafted))


def _girths(drafted: Drafted) -> Iterator[Expectation]:
    waist = _promise(drafted, "waist", 2, drafted.given.waist, "the sewn waist sits on the band or facing")
    yield replace(_from_measure(drafted, waist, "waist_girth", "waist"), kept=True)
    wanted = drafted.given.hip + drafted.pulled("hip_girth")
    hip = _promise(drafted, "hip_line", 2, wanted, "the trousers must pass over the hip with their ease")
    ends = tuple(
        (drafted.names.at(which, HIP_CENTER), drafted.names.at(which, HIP_SIDE)) for which in _PANELS
    )
    yield _of_body(drafted, replace(hip, names=(), chains=ends), "hip_girth", "hip")


def _crotch(drafted: Drafted) -> Iterator[Expectation]:
    given = drafted.given
    reason = "the crotch seam must reach from waist to waist with its ease"
    part_reason = "front and back each have their part of the crotch length, up from the inseam"
    if any(drafted.shared):
        reason = part_reason = _SHARED
    whole = replace(_promise(drafted, "crotch_seam", 1, given.crotch, reason), kind="length")
    is_known = not drafted.measures.crotch_falls
    yield (
        _from_measure(drafted, whole, "crotch_length", "crotch")
        if is_known
        else replace(whole, name=drafted.names.whole("crotch_length"))
    )
    if given.front_crotch is None or given.back_crotch is None:
        return
    missed = drafted.half.split_miss
    for which, part, way in (("front", given.front_crotch, missed), ("back", given.back_crotch, -missed)):
        key = f"{which}_crotch_length"
        # Where the wearer's legs differ both have the mean of what each would have: that is nobody's measure.
        is_taken = drafted.measures.given.front_crotch is not None and not drafted.is_dropped
        body = drafted.measures.body[key] if is_taken else part + way
        yield Expectation(
            drafted.names.whole(key),
            key if is_taken else "",
            (drafted.names.at(which, "crotch_seam"),),
            1,
            body,
            part + way - body,
            part_reason,
            kind="length",
        )


def _lengths(drafted: Drafted) -> Iterator[Expectation]:
    names, given = drafted.names, drafted.given
    outside = drafted.measures.body.get("outside_leg")
    has_measure = outside is not None and not drafted.is_dropped
    body = outside if outside is not None and has_measure else given.length
    yield Expectation(
        names.whole("outside_leg"),
        "outside_leg" if has_measure else "",
        (names.at("front", "side_seam"),),
        1,
        body,
        given.length - body,
        "from the upper edge down the side to the hem the trousers are as long as asked",
        kind="length",
    )
    body = given.rise - given.hip_depth + drafted.pulled("hip_level")
    yield Expectation(
        names.whole("hip_to_crotch"),
        "",
        (),
        1,
        body,
        drafted.half.depth,
        "the fork hangs so far below the body's",
        usual_ease=drafted.measures.eases["rise"].usual,
        kind="length",
        chains=((names.at("front", HIP_SIDE), names.at("front", "crotch_point")),),
        reach="down",
    )


def _legs(drafted: Drafted) -> Iterator[Expectation]:
    given, names = drafted.given, drafted.names
    if given.knee is not None and drafted.half.front.knee is not None:
        wanted = given.knee + drafted.pulled("knee_girth")
        knee = _promise(drafted, "knee_line", 1, wanted, "the knee must bend in the leg")
        yield _of_body(drafted, knee, "knee_girth", None)
    if given.hem is not None:
        ends = tuple((names.at(which, "hem_inseam"), names.at(which, "hem_side")) for which in _PANELS)
        wanted = given.hem + drafted.pulled("hem_girth") + drafted.pulled("hem_follows")
        hem = _promise(drafted, "hem", 1, wanted, "the hem is as wide as asked")
        yield replace(hem, name=names.whole("hem_girth"), names=(), chains=ends)


def _promise(drafted: Drafted, word: str, times: int, wanted: float, reason: str) -> Expectation:
    """A length on front and back together, without a measure yet."""
    names = tuple(drafted.names.at(which, word) for which in _PANELS)
    return Expectation(drafted.names.whole(word), "", names, times, wanted, 0.0, reason)


def _from_measure(drafted: Drafted, promise: Expectation, key: str, ease: str) -> Expectation:
    """The promise as that of a measure at the waist; below it the measure is another that nobody took."""
    if not drafted.is_dropped:
        return _of_body(drafted, promise, key, ease)
    taken = drafted.measures.eases[ease]
    body = promise.wanted - taken.value
    return replace(
        promise, name=drafted.names.whole(key), body=body, ease=taken.value, usual_ease=taken.usual
    )


def _of_body(drafted: Drafted, promise: Expectation, key: str, ease: str | None) -> Expectation:
    """The promise as that of a measure and its ease, mm."""
    body = drafted.measures.body.get(key)
    usual = None if ease is None else drafted.measures.eases[ease].usual
    named = replace(promise, name=drafted.names.whole(key), usual_ease=usual)
    if body is None:
        return named
    return replace(named, measure=key, body=body, ease=promise.wanted - body)
