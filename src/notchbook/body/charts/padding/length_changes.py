"""Lengths in which a form and a client differ: no padding alters them, they are marked on the form."""

from dataclasses import dataclass
from typing import Final

from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry

_ADVICE: Final = {
    "shoulder_length": (
        "build the shoulder out at the armhole by this much",
        "mark the client's shoulder point inside the form's and drape to it; the form cannot be cut back",
    ),
    "back_waist_length": (
        "tie the waist tape this much lower at the center back",
        "tie the waist tape this much higher at the center back; the form itself cannot be shortened",
    ),
    "front_waist_length": (
        "more way over the bust: pad it first, then measure again before you move the waist tape in front",
        "less way over the bust: mark the waist this much higher in front; nothing can be taken off",
    ),
    "center_front_length": (
        "tie the waist tape this much lower at the center front",
        "tie the waist tape this much higher at the center front",
    ),
    "neck_to_bust_point": (
        "set the bust point this much lower and build the pad round it",
        "set the bust point this much higher and build the pad round it; the form's own point stays beneath",
    ),
    "bust_point_width": (
        "set each bust point out by half of this",
        "set each bust point in by half of this",
    ),
    "hip_depth": (
        "mark the hip level this much lower",
        "mark the hip level this much higher",
    ),
}
"""Key -> what to do where the client is longer, and where she is shorter (common practice, no source)."""

MARKED_LENGTHS: Final = tuple(_ADVICE)
"""The lengths that are looked at, from the shoulder down."""


@dataclass(frozen=True, slots=True)
class LengthChange:
    """One length, mm: ``difference`` is the client's minus the form's; ``advice`` what to do about it."""

    key: str
    form: float
    client: float
    difference: float
    advice: str


def length_changes(form: MeasureSet, client: MeasureSet) -> tuple[LengthChange, ...]:
    """The lengths that differ by more than two readings may, from the shoulder down."""
    found: list[LengthChange] = []
    for key, (longer, shorter) in _ADVICE.items():
        on_form, on_client = form.find(key), client.find(key)
        if on_form is None or on_client is None:
            continue
        difference = on_client.value - on_form.value
        if abs(difference) > measure_entry(key).repeat:
            advice = longer if difference > 0 else shorter
            found.append(LengthChange(key, on_form.value, on_client.value, difference, advice))
    return tuple(found)
