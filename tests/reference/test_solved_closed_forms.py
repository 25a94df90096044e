"""Solved numbers against closed forms of plane geometry (any school book), never against the house's own.

- The hem of a circle skirt: the arc of radius (waist radius + length) is as much longer than the arc at the
  waist as the turn of the skirt, in radians, times the length: 2 pi for a full circle, pi for a half.
- A hem put out at both ends of a straight panel by an angle: the chord grows by twice length times tangent.
"""

import math

import pytest

from notchbook.app.drafting import draft
from notchbook.body import MeasureSet
from notchbook.recipe.targets import Order, make_it_measure, measured, number_named, read_quantity, read_wish

BODY = MeasureSet.from_mm("Invented", {"waist_girth": 700.0, "hip_girth": 960.0, "hip_depth": 200.0})


@pytest.mark.parametrize(("fullness", "turn"), [("full", 2.0 * math.pi), ("half", math.pi)])
@pytest.mark.parametrize("longer", [180.0, -140.0])
def test_the_length_of_a_circle_skirt_for_a_wanted_hem(fullness: str, turn: float, longer: float) -> None:
    run = draft("circle_skirt", BODY, {"fullness": fullness, "length": "600 mm"})
    hem = measured(run, read_quantity("around hem", run))
    wish = read_wish(f"around hem = {hem + turn * longer:.6f} mm", run)
    done = make_it_measure(run, (Order(wish, number_named(run.recipe, "length")),))
    assert done.numbers[0].value == pytest.approx(600.0 + longer, abs=0.01)


def test_the_waist_of_a_full_circle_sets_its_radius() -> None:
    """Between hem and waist of a full circle lie 2 pi times the length, whatever the waist measures."""
    run = draft("circle_skirt", BODY, {"fullness": "full", "length": "600 mm"})
    done = make_it_measure(
        run, (Order(read_wish("finished waist = 760 mm", run), number_named(run.recipe, "waist_ease")),)
    )
    assert done.numbers[0].stored == "60 mm"
    after = done.after
    hem, waist = (measured(after, read_quantity(f"around {word}", after)) for word in ("hem", "waist"))
    assert hem - waist == pytest.approx(2.0 * math.pi * 600.0, abs=0.1)


def test_the_flare_of_a_skirt_for_a_wanted_chord_of_its_hem() -> None:
    """Each side leaves the straight by the flare below the hip: its end goes out by length times tangent."""
    run = draft("skirt", BODY, {"length": "600 mm"})
    chord = "distance skirt.front/hem_center to skirt.front/hem_side across"
    straight = measured(run, read_quantity(chord, run))
    wish = read_wish(f"{chord} = {straight + 50.0:.6f} mm", run)
    done = make_it_measure(run, (Order(wish, number_named(run.recipe, "flare")),))
    piece = done.after.pattern.pieces["skirt.front"]
    hip, hem = piece.line("skirt.front/hip_line").path, piece.points["skirt.front/hem_side"]
    down = abs(hem.y - hip.start.y)
    assert math.degrees(math.atan2(50.0, down)) == pytest.approx(done.numbers[0].value, abs=0.05)
