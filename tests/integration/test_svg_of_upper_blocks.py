"""The exported SVG of a bodice and its sleeve, measured again by svgpathtools and shapely.

What each length must come to is worked out here from the measures of the invented body and the eases of
its draft, never from what the draft promises.
"""

import io
from functools import cache

import numpy as np
import pytest
import shapely
import svgpathtools

from notchbook.finish import finish, production_table
from notchbook.output.svg import svg_of
from support.papers import INFO
from support.upper_patterns import drafted, wanted_of

WITHIN = 0.1
"""mm: what closes on the draft must close on the file that is sent."""

STEPS = 200
"""Chords to a segment for shapely."""


@cache
def lengths() -> dict[str, float]:
    """Each edge and line of the file by its name, mm."""
    drawing = svg_of(finish(drafted().pattern, production_table()), INFO)
    paths, given = svgpathtools.svg2paths(io.StringIO(drawing))
    return {one["id"]: path.length(error=1e-6) for path, one in zip(paths, given, strict=True) if "id" in one}


def along(*words: str) -> float:
    """The sum of all edges and lines whose names begin so, on the wearer's right where sides are told."""
    found = [
        length
        for name, length in lengths().items()
        if any(name == word or name.startswith((f"{word}/", f"{word}@right")) for word in words)
        and not name.endswith("@left")
    ]
    assert len(found) >= len(words)
    return sum(found)


def test_the_neck_and_the_waist_of_the_file_are_body_and_ease() -> None:
    wanted = wanted_of(drafted())
    neck = 2.0 * along("bodice.front/neck", "bodice.back/neck")
    waist = 2.0 * along("bodice.front/waist", "bodice.back/waist")
    assert neck == pytest.approx(wanted["neck_base_girth"], abs=WITHIN)
    assert waist == pytest.approx(wanted["waist_girth"], abs=WITHIN)


def test_shoulders_and_sides_of_the_file_walk() -> None:
    wanted = wanted_of(drafted())
    assert along("bodice.front/shoulder") == pytest.approx(wanted["shoulder_length"], abs=WITHIN)
    assert along("bodice.back/shoulder") == pytest.approx(wanted["shoulder_length"], abs=WITHIN)
    assert along("bodice.front/side_seam") == pytest.approx(along("bodice.back/side_seam"), abs=WITHIN)
    assert along("sleeve.sleeve/front_seam") == pytest.approx(along("sleeve.sleeve/back_seam"), abs=WITHIN)


@pytest.mark.parametrize("which", ["front", "back"])
def test_the_cap_of_the_file_is_its_armhole_and_the_declared_ease(which: str) -> None:
    ease = drafted().pattern.seams[f"sleeve/{which}_armhole"].ease
    assert ease > 5.0, "wool is eased"
    cap, armhole = along(f"sleeve.sleeve/cap_{which}"), along(f"bodice.{which}/armhole")
    assert cap - armhole == pytest.approx(ease, abs=WITHIN)


def test_widths_of_the_file_are_body_and_ease() -> None:
    wanted = wanted_of(drafted())
    for which, line in (("across_back", "bodice.back"), ("across_chest", "bodice.front")):
        assert along(f"{line}/{which}_line") == pytest.approx(wanted[which], abs=WITHIN)
    assert along("sleeve.sleeve/biceps_line") == pytest.approx(wanted["upper_arm_girth"], abs=WITHIN)


def test_no_outline_of_the_file_crosses_itself() -> None:
    """By shapely, on dense polylines of the cut lines."""
    drawing = svg_of(finish(drafted().pattern, production_table()), INFO)
    paths, given = svgpathtools.svg2paths(io.StringIO(drawing))
    found = [path for path, one in zip(paths, given, strict=True) if one.get("id", "").endswith("/cut_line")]
    assert len(found) == 3
    for path in found:
        places = [segment.point(t) for segment in path for t in np.linspace(0.0, 1.0, STEPS, endpoint=False)]
        assert shapely.Polygon([(place.real, place.imag) for place in places]).is_valid
