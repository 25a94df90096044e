"""The names of a dart that a step opens: given from the place's own words, never from the drawing."""

from dataclasses import dataclass

from notchbook.pattern.names import part_name

NEAR, FAR = "near", "far"
"""Roles: nearer to the end from which the place of a cut is counted, and farther from it."""


@dataclass(frozen=True, slots=True)
class DartNames:
    """The names of a new dart, in the direction of the outline: the mouth and leg that come first there."""

    intake: str
    first_leg: str
    second_leg: str
    first_mouth: str
    second_mouth: str
    point: str
    roles: tuple[str, str]
    """What lies before and after the dart in the direction of the outline: of edges and lines cut by it."""

    @staticmethod
    def of(dart: str, counted_from_start: bool) -> "DartNames":
        """The names of the dart ``dart``, its place counted from the start of the edge or from its end."""
        first, second = (NEAR, FAR) if counted_from_start else (FAR, NEAR)
        return DartNames(
            dart,
            part_name(dart, f"{first}_leg"),
            part_name(dart, f"{second}_leg"),
            part_name(dart, f"{first}_mouth"),
            part_name(dart, f"{second}_mouth"),
            part_name(dart, "point"),
            (first, second),
        )
