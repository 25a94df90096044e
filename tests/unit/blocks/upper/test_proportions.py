"""Every figure of the trade says its unit, its source and how sure it is."""

import pytest

from notchbook.blocks.upper import proportion, proportion_table

GRADES = {"standard", "handbook", "memory", "common practice", "own judgment"}


@pytest.mark.parametrize("name", proportion_table())
def test_every_row_is_whole(name: str) -> None:
    row = proportion_table()[name]
    assert row.unit in {"mm", "deg", ""}
    assert row.grade in GRADES
    assert len(row.source) > 10


def test_limits_are_in_order() -> None:
    for section, name in (("side", "share"), ("neck", "width_share"), ("armhole", "width_share")):
        low, usual = proportion(f"{section}.least_{name}"), proportion(f"{section}.usual_{name}")
        assert low < usual < proportion(f"{section}.most_{name}")


def test_an_unknown_figure_is_our_own_fault() -> None:
    with pytest.raises(KeyError):
        proportion("neck.nothing")


def test_every_figure_is_used() -> None:
    """A row that nothing reads would be a promise that nobody keeps."""
    from pathlib import Path

    import notchbook.blocks.upper as package

    folder = Path(str(package.__file__)).parent
    text = "\n".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py"))
    built = {
        f"{section}.{word}_{name}"
        for section, name in (("side", "share"), ("neck", "width_share"), ("neck", "depth_share"))
        for word in ("least", "most", "usual")
    } | {f"armhole.{word}_width_share" for word in ("least", "flagged", "usual")}
    assert {name for name in proportion_table() if f'"{name}"' not in text and name not in built} == set()
