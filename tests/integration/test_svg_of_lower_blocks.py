"""The exported SVG of trousers, skirts and stretch blocks, measured again by svgpathtools and shapely.

What waist, hip and crotch must come to is worked out from the measures of the invented body and the rows of
the ease tables, never from what the draft promises.
"""

import io
from functools import cache
from typing import Any

import numpy as np
import pytest
import shapely
import svgpathtools

from lower_sheets import KINDS
from notchbook.finish import finish, production_table
from notchbook.output.svg import svg_of
from support.lower_patterns import drafted_lower, lower_wanted
from support.papers import INFO
from support.round_skirt_judge import RingWanted

WITHIN = 0.1
"""mm: what closes on the draft must close on the file that is sent."""

STEPS = 200
"""Chords to a segment for shapely."""


@cache
def paths(kind: str) -> dict[str, Any]:
    """Each edge and line of the file by its name."""
    drawing = svg_of(finish(drafted_lower(kind).pattern, production_table()), INFO)
    drawn, given = svgpathtools.svg2paths(io.StringIO(drawing))
    return {one["id"]: path for path, one in zip(drawn, given, strict=True) if "id" in one}


def along(kind: str, *words: str) -> float:
    """The sum of all edges and lines whose names begin so, on the wearer's right where sides are told."""
    found = [
        path.length(error=1e-6)
        for name, path in paths(kind).items()
        if any(name == word or name.startswith((f"{word}/", f"{word}@right")) for word in words)
        and not name.endswith("@left")
    ]
    assert len(found) >= len(words)
    return float(sum(found))


def both(kind: str, slug: str, word: str) -> float:
    """Front and back together."""
    return along(kind, f"{slug}.front/{word}", f"{slug}.back/{word}")


def hip_width(piece: str) -> float:
    """From the straight center, drawn on, along the hip line to the side, mm: where the crotch curve begins
    above the hip, the hip line runs on to it."""
    straight = next(
        one for one in paths("trousers")[f"{piece}/crotch_seam"] if isinstance(one, svgpathtools.Line)
    )
    line = paths("trousers")[f"{piece}/hip_line"]
    way, across = straight.end - straight.start, line.end - line.start
    beside = (straight.start - line.start) * way.conjugate()
    share = beside.imag / (across * way.conjugate()).imag
    center = line.start + share * across
    return float(max(abs(end - center) for end in (line.start, line.end)))


def test_waist_hip_and_crotch_of_the_trousers_file_are_body_and_ease() -> None:
    wanted = lower_wanted("trousers")
    assert 2.0 * both("trousers", "trousers", "waist") == pytest.approx(wanted["waist_girth"], abs=WITHIN)
    hip = sum(hip_width(f"trousers.{which}") for which in ("front", "back"))
    assert 2.0 * hip == pytest.approx(wanted["hip_girth"], abs=WITHIN)
    assert both("trousers", "trousers", "crotch_seam") == pytest.approx(wanted["crotch_length"], abs=WITHIN)


def test_the_seams_of_the_trousers_file_walk() -> None:
    front, back = (along("trousers", f"trousers.{which}/side_seam") for which in ("front", "back"))
    assert front == pytest.approx(back, abs=WITHIN)
    inseams = [along("trousers", f"trousers.{which}/inseam") for which in ("front", "back")]
    ease = abs(drafted_lower("trousers").pattern.seams["trousers/inseam"].ease)
    assert 0.0 <= ease <= 10.0
    assert inseams[0] - inseams[1] == pytest.approx(ease, abs=WITHIN)


def test_the_circle_of_the_file_is_its_closed_form() -> None:
    wanted = lower_wanted("circle-skirt")
    ring = RingWanted(wanted["waist_girth"], 0.5, 600.0)
    assert 2.0 * both("circle-skirt", "circle_skirt", "waist") == pytest.approx(ring.waist, abs=WITHIN)
    assert 2.0 * both("circle-skirt", "circle_skirt", "hem") == pytest.approx(ring.hem, abs=WITHIN)


def test_the_girths_of_the_gores_of_the_file_are_body_and_ease() -> None:
    """A line of a piece on the fold is drawn whole, an edge of it once a side."""
    wanted = lower_wanted("gored-skirt")
    pieces = drafted_lower("gored-skirt").pattern.pieces
    for word, key in (("waist", "waist_girth"), ("hem", "hem_girth")):
        whole = 2.0 * along("gored-skirt", *(f"{piece}/{word}" for piece in pieces))
        assert whole == pytest.approx(wanted[key], abs=WITHIN)
    times = {name: 1.0 if piece.cut == "fold" else 2.0 for name, piece in pieces.items()}
    hip = sum(count * along("gored-skirt", f"{name}/hip_line") for name, count in times.items())
    assert hip == pytest.approx(wanted["hip_girth"], abs=WITHIN)


@pytest.mark.parametrize("which", ["front", "back"])
def test_the_stretch_cap_of_the_file_is_its_armhole(which: str) -> None:
    cap = along("stretch-torso", f"stretch_torso.sleeve/cap_{which}")
    armhole = along("stretch-torso", f"stretch_torso.{which}/armhole")
    assert armhole > 100.0
    assert cap == pytest.approx(armhole, abs=WITHIN)


def test_the_bodysuit_of_the_file_joins_at_side_and_crotch() -> None:
    for word in ("side_seam", "crotch", "shoulder"):
        front, back = (along("bodysuit", f"bodysuit.{which}/{word}") for which in ("front", "back"))
        assert front == pytest.approx(back, abs=WITHIN), word
    opening = both("bodysuit", "bodysuit", "leg_opening")
    assert opening == pytest.approx(lower_wanted("bodysuit")["thigh_girth"], abs=WITHIN)


def test_the_leggings_of_the_file_close_round_the_leg() -> None:
    wanted = lower_wanted("leggings")
    leg = "leggings.leg"
    seams = along("leggings", f"{leg}/front_crotch_seam") + along("leggings", f"{leg}/back_crotch_seam")
    assert seams == pytest.approx(wanted["crotch_length"], abs=WITHIN)
    inseams = [along("leggings", f"{leg}/{which}_inseam") for which in ("front", "back")]
    assert inseams[0] == pytest.approx(inseams[1], abs=WITHIN)
    assert along("leggings", f"{leg}/thigh_line") == pytest.approx(wanted["thigh_girth"], abs=WITHIN)


@pytest.mark.parametrize("kind", [kind.name for kind in KINDS])
def test_no_outline_of_the_file_crosses_itself(kind: str) -> None:
    """By shapely, on dense polylines of the cut lines."""
    found = [path for name, path in paths(kind).items() if name.endswith("/cut_line")]
    assert len(found) == len(drafted_lower(kind).pattern.pieces)
    for path in found:
        places = [segment.point(t) for segment in path for t in np.linspace(0.0, 1.0, STEPS, endpoint=False)]
        assert shapely.Polygon([(place.real, place.imag) for place in places]).is_valid
