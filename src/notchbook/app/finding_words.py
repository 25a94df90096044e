"""A finding in the reader's unit: its words, and its amounts as what they mean.

``24.7 cm, wanted 24.5 cm`` leaves the sum to the reader; what she does with it is let out 2 mm. So a
difference is said as a difference, an ease as an ease, and a limit as a limit.
"""

from collections.abc import Callable
from typing import Final

from notchbook.body.quantity_words import one_unit
from notchbook.errors import entry
from notchbook.errors.catalogue import LengthText, fill, length_in_mm
from notchbook.pattern import Finding
from notchbook.units import LengthStyle, format_degrees, length_in_words

_DIFFERENCES: Final = {
    "closure-large": "too large",
    "closure-small": "too small",
    "closure-other-body": "apart",
    "seam-second-longer": "longer",
    "seam-second-shorter": "shorter",
    "seam-allowances-differ": "apart",
    "dart-legs-differ": "apart",
    "dart-part-legs-differ": "apart",
    "cap-notch-off": "apart",
    "notch-stretch-differs": "apart",
    "sleeve-hem-widened": "wider",
    "sleeve-hem-narrowed": "narrower",
}
"""Findings whose two lengths are compared, with the word for how they differ."""

_MOVED: Final = {
    "seam-eased": ("eased in", "eased in"),
    "seam-stretched": ("stretched on", "stretched on"),
    "measure-gave-way": ("more", "less"),
    "front-neck-raised": ("higher", "lower"),
    "front-neck-with-dart": ("higher", "lower"),
    "front-neck-too-deep": ("higher", "lower"),
    "front-neck-lowered": ("lower", "higher"),
    "hip-ease-raised": ("more ease", "less ease"),
    "side-leans-out": ("outward", "inward"),
    "waist-left-as-it-falls": ("beyond the body", "short of the body"),
    "hem-sticks-out": ("outside", "outside"),
    "drift-moved": ("moved", "moved"),
}
"""Findings whose one length is what was moved, eased or given, with the word for more and for less."""

_REPLACED: Final = frozenset({"measured-value-replaced", "estimate-yields"})
"""Findings that took one value in place of another."""

_IN_WORDS: Final = frozenset(
    {"sleeve-pitch", "hem-excess", "seam-trued", "notch-trued", "dart-legs-trued"}
    | {"hem-bent", "hem-went-along", "dart-moved", "dart-drawn-in", "two-piece-elbow-ease"}
    | {"pleats-laid", "gathers-drawn-in", "sleeve-gathered", "sleeve-cap-height-changed"}
    | {"cuff-lengthens", "cuff-laps-as-tower", "sleeve-arm-ease-gave-way", "hook-beside-bar"}
)
"""Findings whose words hold the amounts already: what is drawn in as it was asked for is no limit missed."""

_EXACT_DEGREES: Final = (90.0, 180.0)
"""Angles that are met or missed; another wanted angle is a limit."""


def message_in(finding: Finding, style: LengthStyle) -> str:
    """What the finding says, its lengths as this reader writes them."""
    return _again(finding, finding.message, lambda: entry(finding.code).message, style)


def suggestion_in(finding: Finding, style: LengthStyle) -> str:
    """What the finding advises, its lengths as this reader writes them."""
    return _again(finding, finding.suggestion, lambda: entry(finding.code).next_step, style)


def amounts_in(finding: Finding, style: LengthStyle) -> str:
    """What was measured, as what it means: ``6 mm eased in``, ``1.8 cm longer: 24.7 cm for 22.9 cm``,
    ``29.5°, at most 27.0°``; empty where nothing was measured or the words of the contradiction say it."""
    if finding.measured is None or finding.contradiction is not None or finding.code in _IN_WORDS:
        return ""
    if finding.error is not None:
        return _estimate(finding, finding.measured, finding.error, style)
    return _said(finding, finding.measured, style)


def _said(finding: Finding, measured: float, style: LengthStyle) -> str:
    """What was measured, beside what was wanted where that says something."""
    code, unit, wanted = finding.code, finding.unit, finding.wanted
    if code in _MOVED:
        return f"{_amount(abs(measured), unit, style)} {_MOVED[code][measured < 0.0]}"
    said = _amount(measured, unit, style)
    other = said if not wanted else _amount(wanted, unit, style)
    if said == other:
        return said
    if code in _REPLACED:
        return f"{other} instead of {said}"
    return _compared(finding, (measured, said), (wanted or 0.0, other), style)


def _compared(
    finding: Finding, measured: tuple[float, str], wanted: tuple[float, str], style: LengthStyle
) -> str:
    """Two values, each with its words: by how much they differ, or one as the limit of the other."""
    (value, said), (other, as_wanted) = measured, wanted
    if finding.code in _DIFFERENCES:
        apart = _amount(abs(value - other), finding.unit, style)
        return f"{apart} {_DIFFERENCES[finding.code]}: {said} for {as_wanted}"
    if not finding.unit or (finding.unit == "deg" and other in _EXACT_DEGREES):
        return f"{said}, wanted {as_wanted}"
    return f"{said}, {'at most' if value > other else 'at least'} {as_wanted}"


def _estimate(finding: Finding, value: float, error: float, style: LengthStyle) -> str:
    """``20.3 ± 1.8 cm``, and what would be estimated now where that is another."""
    spread = one_unit(*(_plain(one, finding.unit, style) for one in (value, error)))
    now = "" if finding.wanted is None else f", now {_plain(finding.wanted, finding.unit, style)}"
    return f"{spread}{now}"


def _again(finding: Finding, words: str, template: Callable[[], str], style: LengthStyle) -> str:
    """The words filled anew; what a later hand added to them stays at their end."""
    if not finding.facts:
        return words
    facts = dict(finding.facts)
    as_made = fill(template(), facts, length_in_mm)
    if not words.startswith(as_made):
        return words
    return fill(template(), facts, in_words(style)) + words[len(as_made) :]


def in_words(style: LengthStyle) -> LengthText:
    """How lengths within sentences are written for this reader."""
    return lambda mm: length_in_words(mm, style)


def _plain(value: float, unit: str, style: LengthStyle) -> str:
    return style.text(value) if unit == "mm" else _amount(value, unit, style)


def _amount(value: float, unit: str, style: LengthStyle) -> str:
    if unit == "mm":
        return length_in_words(value, style)
    return format_degrees(value) if unit == "deg" else f"{value:.4g} {unit}".rstrip()
