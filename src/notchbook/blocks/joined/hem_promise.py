"""The promise on the length: from the waist to the hem down the center back."""

from notchbook.blocks._panel_names import PanelNames
from notchbook.pattern import Expectation


def hem_promise(names: PanelNames, length: float) -> Expectation:
    """``names`` are those of the panels that have the hem; ``length`` from waist to hem, mm."""
    return Expectation(
        names.whole("skirt_length"),
        "",
        (),
        1,
        length,
        0.0,
        "the hem lies where it was asked for",
        kind="length",
        chains=((names.at("back", "waist_center"), names.at("back", "hem_center")),),
    )
