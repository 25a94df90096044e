"""Findings on the levers of the draft: what was pulled to its limit, and which measure was given way."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.upper.shapes import Lever
from notchbook.body import measure_entry
from notchbook.pattern import Finding, Measured, Severity, worded

CHECK = "bodice-draft"
"""The name under which the draft speaks."""

UNSEEN = 0.5
"""mm; a measure that gave way by less is not spoken of."""

WORTH_A_LOOK = 10.0
"""mm; a width that gave way by more is to be looked at, by less it is said for the record. Own judgment:
about what two careful readings of a width may differ."""


@dataclass(frozen=True, slots=True)
class _AtLimit:
    """How a lever at its limit is told: below its least and above its most (empty: not told), and where."""

    low: str
    high: str
    place: tuple[str, str]
    low_word: str = ""
    high_word: str = ""


_AT_LIMIT = {
    "side_place": _AtLimit(
        "side-seam-place-forced", "side-seam-place-forced", ("", "side_seam"), "forward", "backward"
    ),
    "neck_width": _AtLimit("neck-width-forced", "neck-width-forced", ("front", "neck"), "narrower", "wider"),
    "neck_lean": _AtLimit("", "neck-lean-forced", ("front", "neck")),
    "shoulder_tilt": _AtLimit("shoulder-tilt-forced", "shoulder-tilt-forced", ("front", "armhole")),
    "armhole_width": _AtLimit(
        "armhole-width-forced", "armhole-width-forced", ("front", "armhole"), "less", "more"
    ),
    "side_tilt": _AtLimit("bodice-side-leans", "bodice-side-leans", ("", "side_seam"), "out", "in"),
    "balance": _AtLimit(
        "front-back-balance", "front-back-balance", ("front", "side_neck_point"), "long", "short"
    ),
    "bust_dart": _AtLimit("bust-dart-left-out", "bust-dart-wide", ("front", "bust_point")),
    "upper_bust": _AtLimit(
        "upper-bust-disagrees", "upper-bust-disagrees", ("front", "armhole"), "less", "more"
    ),
}

_LOOKED_AT_ELSEWHERE = frozenset({"bust-dart-wide"})
"""What a check of the finished pattern flags: there it falls silent once the dart is shared out. The draft
adds its cause."""

_GIVEN_WAY = {
    "across_back": ("back", "across_back_line"),
    "across_chest": ("front", "across_chest_line"),
    "shoulder": ("front", "shoulder"),
}
"""Measures that the draft may change a little, each with the line where it shows."""

_KEYS = {"shoulder": "shoulder_length"}
"""The measure behind a lever of another name."""


NeckRaised = Literal["front-neck-raised", "front-neck-with-dart", "front-neck-too-deep"]
"""How a front neck that was raised is told: a dart in the neck could take up the difference, it does, or
there is no bust dart to take one from."""


def lever_notes(names: PanelNames, levers: tuple[Lever, ...], raised: NeckRaised) -> Iterator[Finding]:
    """What each lever has to say. ``raised`` is how a front neck that was raised is told."""
    most = max((abs(lever.pulled) for lever in levers if lever.name in _GIVEN_WAY), default=0.0)
    for lever in levers:
        if lever.name in _GIVEN_WAY:
            yield from _given_way(names, lever, is_most=abs(lever.pulled) == most)
        elif lever.name == "center_front":
            yield from _neck_moved(names, lever, raised)
        elif lever.name in _AT_LIMIT and lever.at_limit:
            yield from _at_limit(names, lever, _AT_LIMIT[lever.name])


def _at_limit(names: PanelNames, lever: Lever, told: _AtLimit) -> Iterator[Finding]:
    is_low = lever.pulled <= lever.least
    code = told.low if is_low else told.high
    if code:
        limit = lever.least if is_low else lever.most
        yield worded(
            CHECK,
            code,
            Severity.NOTE if code in _LOOKED_AT_ELSEWHERE else Severity.LOOK,
            Measured(lever.pulled, limit, lever.unit),
            where=_where(names, told.place),
            way=told.low_word if is_low else told.high_word,
        )


def _given_way(names: PanelNames, lever: Lever, *, is_most: bool) -> Iterator[Finding]:
    """A width or the shoulder that gave way. They do so for one cause: the most is to be looked at."""
    if abs(lever.pulled) <= UNSEEN:
        return
    is_much = is_most and (lever.at_limit or abs(lever.pulled) > WORTH_A_LOOK)
    key = _KEYS.get(lever.name, lever.name)
    yield worded(
        CHECK,
        "measure-gave-way",
        Severity.LOOK if is_much else Severity.NOTE,
        Measured(lever.pulled, 0.0, lever.unit),
        where=_where(names, _GIVEN_WAY[lever.name]),
        label=measure_entry(key).label,
        way="more" if lever.pulled > 0.0 else "less",
    )


def _neck_moved(names: PanelNames, lever: Lever, raised: NeckRaised) -> Iterator[Finding]:
    """The front neck raised or lowered against the center front length as measured."""
    if abs(lever.pulled) <= UNSEEN:
        return
    code = raised if lever.pulled > 0.0 else "front-neck-lowered"
    is_cured = code == "front-neck-with-dart"
    is_much = lever.at_limit or (abs(lever.pulled) > WORTH_A_LOOK and not is_cured)
    yield worded(
        CHECK,
        code,
        Severity.LOOK if is_much else Severity.NOTE,
        Measured(abs(lever.pulled), 0.0),
        where=_where(names, ("front", "neck")),
    )


def _where(names: PanelNames, place: tuple[str, str]) -> str:
    piece, word = place
    return names.at(piece, word) if piece else names.side_seam
