"""Zips in the sewing order of the hand-made skirt: 18 cm of its center back of 596 mm are left open.

The order of work at a zip is common practice, no source.
"""

from dataclasses import replace

import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Allowance, EdgeUse, Notch, Operation, Pattern, Place, Seam
from notchbook.recipe import replay
from support.closure_steps import stepped
from support.edge_steps import skirt
from support.hand_skirt import hand_skirt

RECIPES = {style.stem: style.recipe for style in rack()}
STOP = "skirt.back/center_back/zip_stop"
CENTER = "skirt.back/center_back"
ZIP = Operation("zip/zip", "closures", "Set the zip in.", (CENTER,))
SECOND = "under.back"


def text_of(pattern: Pattern, key: str) -> str:
    return next(line.text for line in sewing_order(pattern).lines if line.key == key)


def keys(pattern: Pattern) -> list[str]:
    return [line.key for line in sewing_order(pattern).lines]


def stopping(amount: float, start: str = "center_waist") -> Pattern:
    """The skirt whose zip opens so far from this end of the center back, mm."""
    skirt = hand_skirt()
    notch = skirt.notches[STOP]
    return skirt.with_notches(replace(notch, place=Place(CENTER, f"skirt.back/{start}", amount)))


@pytest.mark.parametrize(
    ("pattern", "told"),
    [
        (stopping(180.0), "Sew the skirt back, left to right, below the zip notch: center back"),
        (
            stopping(180.0, "hem_center"),
            "Sew the skirt back, left to right, above the zip notch: center back",
        ),
        (stopping(596.0), "Leave the skirt back open for the zip: center back"),
        (hand_skirt().with_notches(without=[STOP]), "Sew the skirt back, left to right: center back"),
    ],
    ids=["from the waist", "from the hem", "all of it", "no zip"],
)
def test_a_seam_is_sewn_where_its_zip_leaves_it(pattern: Pattern, told: str) -> None:
    assert text_of(pattern, "skirt/center_back") == told


def test_only_the_seam_of_the_zip_is_sewn_in_part() -> None:
    assert text_of(hand_skirt(), "skirt/side_seam") == "Sew the skirt front to the skirt back: side seam"


def test_a_zip_is_set_in_after_its_seam_is_sewn_below_it() -> None:
    order = keys(hand_skirt().with_operations(ZIP))
    assert order.index("zip/zip") > order.index("skirt/center_back")


def two_skirts(text: str = ZIP.text, *, open_through: bool = True) -> Pattern:
    """The skirt and a second back below it: the waist of the one is sewn to the hem of the other, whose
    center back a zip opens from end to end."""
    skirt = hand_skirt()
    back = skirt.pieces["skirt.back"]
    names = {name: name.replace("skirt.back", SECOND) for name in (*back.names(), "skirt.back/waist")}
    upper = back.renamed(lambda name: names.get(name, name))
    across = Seam(
        "under/across",
        (EdgeUse(f"{SECOND}/hem", f"{SECOND}/hem_center"),),
        (EdgeUse("skirt.back/waist", "skirt.back/center_waist"),),
        allowance_class="waist",  # which alone would come after what is closed
    )
    stop = Place(f"{SECOND}/center_back", f"{SECOND}/center_waist", 596.0 if open_through else 300.0)
    return (
        skirt.with_pieces(upper)
        .with_seams(across)
        .with_notches(Notch(f"{SECOND}/zip_stop", stop, purpose="zip stop"))
        .with_operations(Operation("first/zip", "closures", text, (f"{SECOND}/center_back",)), ZIP)
    )


def test_a_zip_that_runs_on_over_a_seam_is_one_line_after_that_seam() -> None:
    order = keys(two_skirts())
    assert "zip/zip" not in order
    assert order.index("first/zip") > order.index("under/across")
    line = next(line for line in sewing_order(two_skirts()).lines if line.key == "first/zip")
    assert line.at == (f"{SECOND}/center_back", CENTER)


def test_what_waits_for_the_second_part_of_a_zip_waits_for_the_one_line() -> None:
    hook = Operation("hook/hook", "prepare", "Sew the hook on.", after=("zip/zip",))
    order = keys(two_skirts().with_operations(hook))
    assert order.index("hook/hook") > order.index("first/zip")


@pytest.mark.parametrize(
    "pattern",
    [two_skirts("Sew it in by hand."), two_skirts(open_through=False)],
    ids=["another way", "stops"],
)
def test_zips_set_in_otherwise_or_that_stop_before_are_two_lines(pattern: Pattern) -> None:
    assert {"first/zip", "zip/zip"} <= set(keys(pattern))


def _classed(pattern: Pattern, name: str) -> Pattern:
    return pattern.with_allowances({CENTER: Allowance(name)})


def test_below_an_invisible_zip_the_seam_is_closed_after_it() -> None:
    """Its tapes are sewn to flat edges and the seam from the end of its stitches on; below a lapped or
    centered zip the seam is sewn first, since the opening is basted in its line."""
    plain = stopping(180.0).with_operations(ZIP)
    hidden = _classed(plain, "zip_invisible")
    assert keys(hidden).index("skirt/center_back") > keys(hidden).index("zip/zip")
    assert keys(hidden).index("skirt/center_back") < keys(hidden).index("skirt.front/hem_line")
    assert "from the end of the zip down, close to its stitches" in text_of(hidden, "skirt/center_back")
    for other in ("zip", "zip_lapped"):
        order = keys(_classed(plain, other))
        assert order.index("skirt/center_back") < order.index("zip/zip")
        assert "below the zip notch" in text_of(_classed(plain, other), "skirt/center_back")


def test_a_seam_that_must_come_before_an_invisible_zip_stays_there() -> None:
    """Lines that would wait for each other help nobody."""
    needed = replace(ZIP, after=("stay/stay",))
    stay = Operation("stay/stay", "closures", "Stay the opening.", after=("skirt/center_back",))
    order = sewing_order(_classed(stopping(180.0).with_operations(needed, stay), "zip_invisible"))
    assert order.waiting == ()
    found = [line.key for line in order.lines]
    assert found.index("skirt/center_back") < found.index("zip/zip")


@pytest.mark.parametrize(
    ("allowance", "words"),
    [
        ("zip_invisible", "one tape of the invisible zip to each edge, from end to end"),
        ("zip_lapped", "from end to end, lap the other side over it"),
        ("zip", "one tape of the zip behind each, from end to end"),
    ],
)
def test_a_zip_that_parts_its_edge_has_no_notch_to_be_sewn_down_to(allowance: str, words: str) -> None:
    whole = _classed(stopping(596.0).with_operations(ZIP), allowance)
    assert words in text_of(whole, "zip/zip")
    part = _classed(stopping(180.0).with_operations(ZIP), allowance)
    assert text_of(part, "zip/zip") == ZIP.text
    assert text_of(two_skirts(), "first/zip") == ZIP.text, "it runs on into another edge"


def test_a_zip_that_stops_below_a_yoke_is_sewn_down_to_its_notch() -> None:
    """It opens the yoke from end to end, but not the edge of which that is a part."""
    yoke = replay(RECIPES["pleated_yoke_skirt"], dict(lower_bodies())["medium-92"]).pattern
    assert text_of(yoke, "zip/zip") == yoke.operations["zip/zip"].text


def test_a_zip_that_runs_on_over_the_waist_is_sewn_down_to_its_notch() -> None:
    """It opens the bodice from end to end and stops in the skirt."""
    dress = replay(RECIPES["princess_dress"], dict(lower_bodies())["medium-92"]).pattern
    assert text_of(dress, "bodice_zip_2/zip") == "Sew the invisible zip to both edges, down to its notch."
    order = keys(dress)
    assert order.index("dress/back_waist") < order.index("bodice_zip_2/zip")
    assert order.index("bodice_zip_2/zip") < order.index("skirt_center/center_back")


def test_an_opening_in_leather_is_taped_and_not_basted() -> None:
    """Holes of a basting stay in leather (common practice, no source)."""
    said = replace(ZIP, text="Baste or tape the opening closed, and set the zip in.")
    leather = stepped(skirt(), ("leather_making", {})).pattern.making
    made = stopping(180.0).with_operations(said)
    assert text_of(made, "zip/zip").startswith("Baste or tape")
    assert text_of(replace(made, making=leather), "zip/zip").startswith("Tape the opening")
