"""The bust dart that a body usually has, beside the one that its lengths leave."""

from dataclasses import replace
from typing import Final

from notchbook.blocks.upper_measures.dart_outlook import DartOutlook, bust_dart_angle
from notchbook.blocks.upper_measures.expecting import expected_value
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures

FOUR: Final = frozenset({"height", "bust_girth", "waist_girth", "neck_base_girth"})
"""From these it is told what bust dart a body usually has; lengths to a waist are no witness to it."""

DART_KEYS: Final = frozenset({"front_waist_length", "back_waist_length", "neck_to_bust_point"})
"""The measures that move the bust dart most."""


def dart_change(now: UpperMeasures, then: UpperMeasures) -> DartOutlook | None:
    """The bust dart as it stands, and as it would be."""
    if now.population == "men" or now.is_child:
        return None
    angle, expected = bust_dart_angle(now.find), bust_dart_angle(then.find)
    return None if angle is None or expected is None else DartOutlook(angle, expected)


def dart_outlook(measures: UpperMeasures) -> DartOutlook | None:
    """The bust dart that the measures leave, beside that of a body of the same girths and height."""
    angle = bust_dart_angle(measures.find)
    if angle is None or measures.population != "women" or measures.is_child:
        return None
    told = {key: value for key, value in measures.taken.items() if key in FOUR}
    usual = replace(measures, taken=told, estimated={})

    def expect(key: str) -> float | None:
        if key in told:
            return told[key]
        found = expected_value(usual, key)
        return None if found is None else found.value

    expected = bust_dart_angle(expect)
    return None if expected is None else DartOutlook(angle, expected)
