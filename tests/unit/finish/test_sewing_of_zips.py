"""Zips in the sewing order of the hand-made skirt: 18 cm of its center back of 596 mm are left open.

The order of work at a zip is common practice, no source.
"""

from dataclasses import replace

import pytest

from notchbook.finish.sewing import sewing_order
from notchbook.pattern import EdgeUse, Notch, Operation, Pattern, Place, Seam
from support.hand_skirt import hand_skirt

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
