"""A step of amount 0 and an edit to the value that stands: no name comes or goes, and nothing moves."""

from functools import cache
from typing import Any

import pytest

from notchbook.geometry import greatest_gap
from notchbook.recipe import Replay, change_step, replay
from support.edge_steps import BACK, FRONT, applied, bodice, changed, skirt

HEMS = ["skirt.front/hem", "skirt.back/hem"]
SIDES = [
    {"edge": f"skirt.{panel}/side_seam", "from_point": f"skirt.{panel}/waist_side"}
    for panel in ("front", "back")
]

NOTHING: list[tuple[str, str, dict[str, Any]]] = [
    ("skirt", "change_length", {"hems": HEMS, "amount": "0 mm"}),
    (
        "skirt",
        "change_width",
        {
            "amount": "0 mm",
            "seams": [
                {"level": side | {"distance": "0 mm"}, "nothing_at": [side | {"distance": "15 cm"}]}
                for side in SIDES
            ],
        },
    ),
    ("skirt", "taper", {"amount": "0 mm", "nothing_at": [side | {"distance": "25 cm"} for side in SIDES]}),
    ("skirt", "reshape_edge", SIDES[0] | {"points": [{"along": 0.5, "out": "0 mm"}], "mates": [SIDES[1]]}),
    (
        "skirt",
        "curve_hem",
        {"hems": [{"edge": HEMS[0], "from_point": "skirt.front/hem_center", "start": "0 mm", "end": "0 mm"}]},
    ),
    ("skirt", "true_seam", {"seam": "skirt/side_seam", "end": "start"}),
    ("bodice", "true_seam", {"seam": "bodice/side_seam"}),
    ("bodice", "true_junction", {"seam": "bodice/side_seam"}),
    ("bodice", "true_dart", {"dart": f"{BACK}/shoulder_dart"}),
    ("bodice", "true_notch", {"notch": f"{BACK}/side_notch"}),
    ("bodice", "declare_ease", {"seam": "bodice/side_seam", "ease": "0 mm"}),
    (
        "bodice",
        "change_neckline",
        {"necks": [{"edge": f"{FRONT}/neck", "center": f"{FRONT}/neck_pit", "depth": "0 mm"}]},
    ),
    (
        "bodice",
        "change_armhole",
        {
            "armholes": [
                {"edge": f"{panel}/armhole", "underarm": f"{panel}/underarm"} for panel in (FRONT, BACK)
            ],
            "lower": "0 mm",
            "gape": "0 mm",
        },
    ),
]


@cache
def draft(block: str) -> Replay:
    return skirt() if block == "skirt" else bodice()


@pytest.mark.parametrize(
    ("block", "operation", "parameters"), NOTHING, ids=[f"{one[1]}_{one[0]}" for one in NOTHING]
)
def test_a_step_of_nothing_keeps_every_name_and_moves_nothing(
    block: str, operation: str, parameters: dict[str, Any]
) -> None:
    before, done = draft(block).pattern, applied(draft(block), operation, **parameters)
    assert done.suspended is None
    assert list(done.pattern.index.items()) == list(before.index.items())
    assert done.pattern.fates == before.fates
    assert done.pattern.seams.keys() == before.seams.keys()
    for name, edge in before.edges.items():
        assert greatest_gap(edge.path, done.pattern.edges[name].path) < 0.01, name
    body = draft(block).measures
    step = done.recipe.steps[-1]
    again = change_step(done.recipe, step.id, dict(step.parameters), base=body)
    assert again == done.recipe
    assert list(replay(again, body, done).pattern.index) == list(done.pattern.index)


def test_a_step_of_something_is_not_nothing() -> None:
    """What is asked above can fail: an edge that moves is seen, and a name that comes."""
    before = draft("skirt").pattern
    moved = changed(draft("skirt"), "change_length", hems=HEMS, amount="1 mm")
    assert greatest_gap(moved.edges[HEMS[0]].path, before.edges[HEMS[0]].path) > 0.9
    vent = {"edge": "skirt.back/center_back", "hem_end": "skirt.back/hem_center"}
    assert list(changed(draft("skirt"), "vent", **vent).index) != list(before.index)
