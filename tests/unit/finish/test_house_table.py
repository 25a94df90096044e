"""The house table: what it holds, how it is changed, what it refuses."""

from pathlib import Path as FilePath

import pytest

from notchbook.errors import InputError
from notchbook.finish import muslin_table, production_table, read_house_table
from notchbook.finish.row import GRADES

# Factory allowance charts in inches, as the trade prints them, and their usual metric figures.
PRINTED = {"plain": 3 / 8, "side": 1 / 2, "waist": 1 / 2, "zip": 3 / 4, "facing_edge": 1 / 4, "let_out": 1.0}
# Hem depth table of a fashion school: straight skirt 2 to 3 in, dress 1 1/2 to 2 in, flared 1/4 to 3/8 in.
HEMS = {"hem_skirt_straight": (2.0, 3.0), "hem_dress": (1.5, 2.0), "hem_skirt_flared": (0.25, 0.375)}


@pytest.mark.parametrize(("name", "inches"), PRINTED.items())
def test_allowances_agree_with_printed_charts(name: str, inches: float) -> None:
    assert production_table().width(name) == pytest.approx(inches * 25.4, abs=0.75)


@pytest.mark.parametrize(("name", "limits"), HEMS.items())
def test_hems_lie_in_the_printed_range(name: str, limits: tuple[float, float]) -> None:
    low, high = (inches * 25.4 for inches in limits)
    assert low - 0.5 <= production_table().width(name) <= high + 0.5


def test_marks_agree_with_the_trade() -> None:
    table = production_table()
    # Notch 1/8 to 1/4 in, not nearer than 1/8 in to the sew line; drill 1/2 in before the dart point;
    # double notches 3/8 to 1/2 in apart (factory marking rules).
    assert 3.0 <= table.mark("notch_depth") <= 6.4
    assert table.mark("notch_clearance") == pytest.approx(25.4 / 8, abs=0.2)
    assert table.mark("drill_before_point") == pytest.approx(25.4 / 2, abs=0.4)
    assert 25.4 * 3 / 8 <= table.mark("notch_spacing") <= 25.4 / 2


@pytest.mark.parametrize("table", [production_table(), muslin_table()])
def test_every_row_says_where_it_comes_from(table: object) -> None:
    assert isinstance(table, type(production_table()))
    for row in (*table.allowances.values(), *table.marks.values()):
        assert len(row.source) > 5
        assert row.grade in GRADES


def test_muslin_is_wider_to_let_out() -> None:
    muslin, cloth = muslin_table(), production_table()
    assert muslin.width("side") > cloth.width("side")
    assert muslin.width("plain") == 25.0
    assert muslin.width("facing_edge") == cloth.width("facing_edge")


def test_changes_are_marked_as_the_house_s_own() -> None:
    changed = production_table().with_changes({"side": 15.0, "notch_depth": 4, "supply": "fold"}, "mine")
    assert changed.width("side") == 15.0
    assert changed.allowances["side"].grade == "house"
    assert changed.mark("notch_depth") == 4.0
    assert (changed.supply, changed.name) == ("fold", "mine")
    assert production_table().width("side") == 12.0


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"sid": 15.0}, "house-key-unknown"),
        ({"side": -1.0}, "house-value-unusable"),
        ({"side": float("nan")}, "house-value-unusable"),
        ({"side": 2000.0}, "house-value-unusable"),
        ({"side": "wide"}, "house-value-unusable"),
        ({"side": True}, "house-value-unusable"),
        ({"supply": "half"}, "house-supply-unknown"),
        ({"notch_depth": 2.0}, "house-notch-order"),
        ({"corner_limit": 0.5}, "house-value-unusable"),
    ],
)
def test_unusable_changes_are_refused(changes: dict[str, float | str], code: str) -> None:
    with pytest.raises(InputError) as refused:
        production_table().with_changes(changes)
    assert refused.value.code == code
    assert str(refused.value)


def test_an_unknown_class_names_the_nearest() -> None:
    with pytest.raises(InputError) as refused:
        production_table().width("hem_skirt_strait")
    assert refused.value.code == "allowance-class-unknown"
    assert "hem_skirt_straight" in str(refused.value)


def _read(tmp_path: FilePath, text: str) -> object:
    path = tmp_path / "house.toml"
    path.write_text(text, encoding="utf-8")
    return read_house_table(path)


def test_a_studio_s_own_file(tmp_path: FilePath) -> None:
    table = _read(
        tmp_path,
        'name = "studio"\nunit = "cm"\nbase = "muslin"\n'
        '[allowance]\nside = 1.5\nwaist = "5/8 in"\nplacket = { value = 0.3, grade = "memory" }\n'
        "[mark]\nnotch_depth = 0.4\ncorner_limit = 3\n",
    )
    assert isinstance(table, type(production_table()))
    assert table.width("side") == 15.0
    assert table.width("waist") == pytest.approx(15.875)
    assert table.width("placket") == 3.0
    assert table.width("plain") == 25.0
    assert table.mark("notch_depth") == 4.0
    assert table.mark("corner_limit") == 3.0


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("[allowance]\nside = 15\n", "house-unit-missing"),
        ('unit = "ell"\n', "house-unit-missing"),
        ('unit = "mm"\n[allowance\n', "house-file-not-toml"),
        ('unit = "mm"\nallowance = 3\n', "house-section-malformed"),
        ('unit = "mm"\n[mark]\nnotch_deph = 4\n', "house-key-unknown"),
        ('unit = "mm"\n[allowances]\nside = 4\n', "house-key-unknown"),
        ('unit = "mm"\n[allowance]\nside = nan\n', "house-value-unusable"),
        ('unit = "mm"\n[allowance]\nside = true\n', "house-value-unusable"),
        ('unit = "mm"\n[allowance]\nside = "wide"\n', "number-not-a-number"),
        ('unit = "mm"\n[allowance]\nside = 999\n', "house-value-unusable"),
        ('unit = "mm"\nbase = "factory"\n', "house-base-unknown"),
        ('unit = "mm"\nsupply = "half"\n', "house-supply-unknown"),
        ('unit = "mm"\n[allowance]\nside = { value = 3, grade = "hearsay" }\n', "house-grade-unknown"),
    ],
)
def test_bad_files_are_refused_with_their_own_words(tmp_path: FilePath, text: str, code: str) -> None:
    with pytest.raises(InputError) as refused:
        _read(tmp_path, text)
    assert refused.value.code == code or (code.startswith("number") and refused.value.code[:6] == "number")
    assert str(refused.value)


def test_files_that_cannot_be_read(tmp_path: FilePath) -> None:
    with pytest.raises(InputError) as refused:
        read_house_table(tmp_path / "none.toml")
    assert refused.value.code == "house-file-missing"
    with pytest.raises(InputError) as refused:
        read_house_table(tmp_path)
    assert refused.value.code == "house-file-unreadable"
    (tmp_path / "noise.toml").write_bytes(b"\xff\xfe\x00\x81")
    with pytest.raises(InputError) as refused:
        read_house_table(tmp_path / "noise.toml")
    assert refused.value.code == "house-file-unreadable"
    (tmp_path / "big.toml").write_bytes(b"#" * 1_000_001)
    with pytest.raises(InputError) as refused:
        read_house_table(tmp_path / "big.toml")
    assert refused.value.code == "house-file-large"


def test_zips_are_told_in_the_lengths_of_the_file(tmp_path: FilePath) -> None:
    """What is not named stays; a list holds for every reader, lists by unit for readers of that unit."""
    table = tmp_path / "house.toml"
    table.write_text(
        'unit = "cm"\n[zip]\nclosed = [30, "8 in", 18]\ninvisible = { in = [9, 7] }\n', encoding="utf-8"
    )
    zips = read_house_table(table).zips
    assert zips["closed"].metric == zips["closed"].inches
    assert zips["closed"].metric == pytest.approx((180.0, 203.2, 300.0))
    assert zips["invisible"].metric == zips["invisible"].inches
    assert zips["invisible"].metric == pytest.approx((177.8, 228.6))
    assert zips["closed"].grade == "house"
    assert zips["parting"] == production_table().zips["parting"]


@pytest.mark.parametrize("name", ["closed", "invisible", "parting"])
def test_the_zips_of_the_program_say_where_they_come_from(name: str) -> None:
    for table in (production_table(), muslin_table(), production_table().with_changes({"side": 14.0})):
        stock = table.zips[name]
        assert stock.grade == "common practice"
        assert len(stock.source) > 5
        for lengths in (stock.metric, stock.inches):
            assert list(lengths) == sorted(set(lengths))
    assert all(one % 10.0 == pytest.approx(0.0) for one in stock.metric)
    assert all(one / 25.4 == pytest.approx(round(one / 25.4)) for one in stock.inches)


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        ("zip = 18", "house-section-malformed"),
        ("[zip]\nfly = [18]", "house-key-unknown"),
        ("[zip]\nclosed = []", "house-lengths-unusable"),
        ("[zip]\nclosed = 18", "house-lengths-unusable"),
        ("[zip]\nclosed = [true]", "house-lengths-unusable"),
        ("[zip]\nclosed = [nan]", "house-lengths-unusable"),
        ("[zip]\nclosed = [1]", "house-lengths-unusable"),
        ("[zip]\nclosed = [18000]", "house-lengths-unusable"),
        ("[zip]\nclosed = {}", "house-lengths-unusable"),
        ('[zip]\nclosed = { cm = [18], grade = "sure" }', "house-grade-unknown"),
        ("[zip]\nclosed = { cm = [18], inn = [7] }", "house-key-unknown"),
        ('[zip]\nclosed = ["long"]', "number-text"),
    ],
)
def test_unusable_zips_are_refused(lines: str, code: str, tmp_path: FilePath) -> None:
    table = tmp_path / "house.toml"
    table.write_text(f'unit = "cm"\n{lines}\n', encoding="utf-8")
    with pytest.raises(InputError) as refused:
        read_house_table(table)
    assert refused.value.code == code
    assert str(refused.value)
