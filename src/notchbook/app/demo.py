"""The demonstration: a straight skirt for an invented dress form, from measures to paper.

The studio, the form, the style number and every figure here are invented; nothing is a real person.
"""

from typing import Any, Final

from notchbook.body import MeasureSet, set_from_data
from notchbook.recipe import Recipe, add_step

DEMO_NUMBER = "S-101"
DEMO_NAME = "Straight skirt"

DEMO_FORM = {
    "name": "Form A",
    "kind": "form",
    "unit": "cm",
    "note": "Invented dress form of the demonstration.",
    "measures": {"height": 168, "waist_girth": 70.5, "hip_girth": 97, "hip_depth": 20.5},
}
"""Measures of the invented form, cm."""

DEMO_CLIENT = {
    "name": "Marta V.",
    "kind": "body",
    "unit": "in",
    "note": "Invented client of the demonstration.",
    "measures": {
        "height": "65 1/2",
        "waist_girth": "31 1/4",
        "hip_girth": "41 3/8",
        "hip_depth": "8 1/4",
    },
}
"""Measures of the invented client, inches."""

DEMO_MORE_FORMS: Final[tuple[dict[str, Any], ...]] = (
    {
        "name": "Form B",
        "kind": "form",
        "unit": "cm",
        "population": "women",
        "label_size": "12",
        "note": "Invented for the examples: a dress form of no real maker. Labeled 12; it is none.",
        "measures": {
            "neck_base_girth": 37,
            "shoulder_length": 12.4,
            "upper_bust_girth": 83,
            "bust_girth": 86.5,
            "under_bust_girth": 72,
            "front_bust_arc": 45,
            "waist_girth": 66,
            "top_hip_girth": 84,
            "hip_girth": 91.5,
            "back_waist_length": 40,
            "neck_to_bust_point": 26,
            "bust_point_width": 17.6,
            "hip_depth": 20,
        },
    },
    {
        "name": "Form C",
        "kind": "form",
        "unit": "cm",
        "population": "women",
        "label_size": "40",
        "note": "Invented for the examples: a dress form of no real maker. Sold as a 40, small in the waist.",
        "measures": {
            "neck_base_girth": 37.5,
            "shoulder_length": 12.8,
            "upper_bust_girth": 87.5,
            "bust_girth": 91,
            "under_bust_girth": 77,
            "front_bust_arc": 47.8,
            "waist_girth": 71,
            "top_hip_girth": 89.5,
            "hip_girth": 96.5,
            "back_waist_length": 41.2,
            "neck_to_bust_point": 27.4,
            "bust_point_width": 18.4,
            "hip_depth": 20.5,
        },
    },
    {
        "name": "Form D",
        "kind": "form",
        "unit": "cm",
        "population": "women",
        "label_size": "M",
        "note": "Invented for the examples: a dress form of no real maker. Called M, in truth an L.",
        "measures": {
            "neck_base_girth": 39.5,
            "shoulder_length": 13.1,
            "upper_bust_girth": 95,
            "bust_girth": 101,
            "under_bust_girth": 86,
            "front_bust_arc": 53.2,
            "waist_girth": 82.5,
            "top_hip_girth": 98.5,
            "hip_girth": 106,
            "back_waist_length": 42.5,
            "neck_to_bust_point": 29.5,
            "bust_point_width": 19.8,
            "hip_depth": 20.5,
        },
    },
)
"""Three more invented dress forms, cm: their labels say 12, 40 and M, and the tape says otherwise."""

DEMO_FULLER_CLIENT: Final[dict[str, Any]] = {
    "name": "Rosa L.",
    "kind": "body",
    "unit": "cm",
    "population": "women",
    "note": "Invented for the examples: not a real person.",
    "measures": {
        "height": 166,
        "neck_base_girth": 38,
        "shoulder_length": 12.2,
        "upper_bust_girth": 91,
        "bust_girth": {"readings": [97.5, 98.1]},
        "under_bust_girth": 80.5,
        "front_bust_arc": 52.6,
        "waist_girth": {"readings": [77, 77.6]},
        "top_hip_girth": 95,
        "hip_girth": {"readings": [103, 103.4]},
        "back_waist_length": 40.6,
        "neck_to_bust_point": 29,
        "bust_point_width": 19.4,
        "hip_depth": 20.5,
    },
}
"""Measures of a second invented client, cm: the three forms can be held against her."""


def demo_form() -> MeasureSet:
    """The invented dress form."""
    return set_from_data(DEMO_FORM)


def demo_client() -> MeasureSet:
    """The invented client."""
    return set_from_data(DEMO_CLIENT)


def demo_more_forms() -> tuple[MeasureSet, ...]:
    """The three invented dress forms whose labels lie."""
    return tuple(set_from_data(data) for data in DEMO_MORE_FORMS)


def demo_fuller_client() -> MeasureSet:
    """The invented client that one of them can be padded for."""
    return set_from_data(DEMO_FULLER_CLIENT)


def demo_recipe(base: MeasureSet) -> Recipe:
    """A straight skirt with a center back zip, a vent and a waistband."""
    front, back = "skirt.front", "skirt.back"
    recipe = Recipe(DEMO_NAME, DEMO_NUMBER)
    recipe = add_step(recipe, "skirt", {"length": "62 cm"}, base=base)
    recipe = add_step(
        recipe,
        "vent",
        {"edge": f"{back}/center_back", "hem_end": f"{back}/hem_center", "height": "18 cm"},
        base=base,
    )
    recipe = add_step(
        recipe,
        "zip_opening",
        {"edge": f"{back}/center_back/seam", "from_point": f"{back}/waist_center", "length": "20 cm"},
        base=base,
    )
    return add_step(
        recipe,
        "waistband",
        {
            "edges": [
                {"edge": f"{back}/waist", "starts_at": f"{back}/waist_center"},
                {"edge": f"{front}/waist", "starts_at": f"{front}/waist_side"},
            ]
        },
        base=base,
    )
