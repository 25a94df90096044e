"""A dart that another body leaves out: what a step that names it says."""

import pytest

from notchbook.body.charts import shipped_chart
from notchbook.recipe import Recipe, Replay, add_step, replay

SIZES = {size.name.rpartition(" ")[2]: size for size in shipped_chart("women").sizes}
FRONT_DART = "trousers.front/waist_dart"
FRONT_CENTER = "trousers.front/crotch_seam"


def replayed(operation: str, parameters: dict[str, object], size: str) -> Replay:
    """Trousers written down with darts on size 80, with a step on the front one, on a size of the chart: 116
    leaves that dart out."""
    asked = {"silhouette": "straight", "front_darts": 1, "back_darts": 2}
    recipe = add_step(Recipe("Trousers"), "trousers", asked, base=SIZES["80"])
    recipe = add_step(recipe, operation, parameters, base=SIZES["80"])
    return replay(recipe, SIZES[size])


@pytest.mark.parametrize("into", ["gather", "ease", "tuck", "pleat"])
def test_it_is_taken_up_otherwise_only_where_it_is_sewn(into: str) -> None:
    told: dict[str, object] = {"darts": [FRONT_DART], "into": into}
    assert replayed("convert_dart", told, "80").suspended is None
    suspended = replayed("convert_dart", told, "116").suspended
    assert suspended is not None
    assert suspended.error.code == "dart-empty"


@pytest.mark.parametrize(
    ("operation", "parameters"),
    [
        ("shorten_dart", {"darts": [FRONT_DART], "amount": "1 cm"}),
        ("true_dart", {"dart": FRONT_DART}),
        ("fold_dart", {"darts": [FRONT_DART], "center": FRONT_CENTER}),
        ("dart_to_flare", {"intake": FRONT_DART, "hem": "trousers.front/hem", "still": FRONT_CENTER}),
    ],
)
def test_what_changes_a_dart_changes_nothing_where_there_is_none(
    operation: str, parameters: dict[str, object]
) -> None:
    for size in ("80", "116"):
        assert replayed(operation, parameters, size).suspended is None
