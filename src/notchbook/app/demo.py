"""The demonstration: a straight skirt for an invented dress form, from measures to paper.

The studio, the form, the style number and every figure here are invented; nothing is a real person.
"""

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


def demo_form() -> MeasureSet:
    """The invented dress form."""
    return set_from_data(DEMO_FORM)


def demo_client() -> MeasureSet:
    """The invented client."""
    return set_from_data(DEMO_CLIENT)


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
