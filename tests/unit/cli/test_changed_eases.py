"""The ease table on the screen: the ease as it is now, and below it what was drafted and what changed it."""

from io import StringIO

from notchbook.app.eases.ease_rows import EaseRow
from notchbook.cli.screen import Screen
from notchbook.cli.show_pattern import ease_data, show_eases

HIP = EaseRow(
    "skirt/hip_girth",
    "girth",
    "hip_girth",
    1000.0,
    50.0,
    1410.0,
    1050.0,
    (25.0, 60.0),
    changed_by=("Pleats",),
)
NECK = EaseRow(
    "top/neck_base_girth",
    "girth",
    "neck_base_girth",
    370.0,
    0.0,
    None,
    None,
    None,
    gone="front, neck: it became the fold of a cowl",
    changed_by=("Cowl neckline",),
)
WAIST = EaseRow("skirt/waist_girth", "girth", "waist_girth", 760.0, 15.0, 775.0, 775.0, (0.0, 25.0))


def test_the_ease_is_that_of_now_and_what_was_drafted_stands_below() -> None:
    stream = StringIO()
    show_eases(Screen(stream), (HIP, WAIST, NECK), "cm")
    said = stream.getvalue()
    (hip,) = [line for line in said.splitlines() if "141.0 cm" in line]
    assert "41.0 cm" in hip.replace("141.0 cm", "") and "105.0 cm" in hip
    assert "  skirt, hip girth: drafted with 5.0 cm of ease, changed by Pleats." in said
    assert "no longer to be measured: front, neck: it became the fold of a cowl (Cowl neckline)." in said
    assert "waist girth: " not in said


def test_the_same_as_data() -> None:
    hip, waist, neck = ease_data((HIP, WAIST, NECK))
    assert (hip["ease"], hip["ease_now"], hip["changed_by"]) == (50.0, 410.0, ["Pleats"])
    assert waist["ease_now"] == waist["ease"] == 15.0
    assert "changed_by" not in waist
    assert (neck["ease_now"], neck["gone"]) == (None, "front, neck: it became the fold of a cowl")
