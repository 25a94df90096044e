"""What an import would store, and what it refuses, row by row. All lists are invented."""

import json
from pathlib import Path

import pytest

from notchbook.body import (
    Circumstances,
    Measure,
    MeasureSet,
    read_bodies,
    read_measures,
    set_from_data,
    set_to_data,
)
from notchbook.body.importing import Answers, LineAnswer, Preview, preview, propose, read_table
from notchbook.body.importing.preview_data import preview_data
from notchbook.errors import InputError


def of(text: str, answers: Answers | None = None, source: str = "list") -> Preview:
    table = read_table(text)
    return preview(table, propose(table, answers), source)


CLIENTS = (
    'Name,Bust (cm),Waist (in),Full hip (cm),Notes\nAnna,"94,5","29 1/2",98 cm,likes room\nBea,90,27⅜,96,\n'
)


def test_values_are_stored_in_mm_whatever_their_unit() -> None:
    shown = of(CLIENTS)
    assert shown.ready
    anna, bea = shown.sets()
    assert anna == MeasureSet(
        "Anna",
        {"bust_girth": Measure(945), "waist_girth": Measure(749.3), "hip_girth": Measure(980)},
        note="likes room",
    )
    # 27 3/8 in x 25.4 mm (international inch, exact).
    assert bea.value("waist_girth") == pytest.approx(27.375 * 25.4)
    assert [(value.key, value.text) for value in shown.rows[0].values] == [
        ("bust_girth", "94,5"),
        ("waist_girth", "29 1/2"),
        ("hip_girth", "98 cm"),
    ]


@pytest.mark.parametrize(
    ("cell", "code"),
    [
        ("9.4", "measure-impossible"),
        ("about 94", "number-text"),
        ("1,234", "number-decimal-signs"),
        ("37 5/4", "number-fraction"),
        ("37 1/0", "number-zero-denominator"),
        ("94 furlongs", "length-unit-unknown"),
        ("5'14", "length-feet"),
        ("-94", "number-negative"),
        ("9e1", "number-exponent"),
        ("nan", "number-not-finite"),
        ("92-96", "number-text"),
    ],
)
def test_a_bad_cell_is_refused_alone_and_named(cell: str, code: str) -> None:
    shown = of(f"Name;Bust (cm);Waist (cm)\nAnna;{cell};74\nBea;90;70\n")
    bad, good = shown.rows
    (refusal,) = bad.refusals
    assert (refusal.line, refusal.code, refusal.text) == ("Bust (cm)", code, cell)
    assert refusal.message and refusal.next_step
    assert [value.key for value in bad.values] == ["waist_girth"]
    assert good.good and not bad.good
    assert (shown.good, shown.refused) == (1, 1)


def test_an_inch_in_a_centimeter_column_offers_what_was_meant() -> None:
    shown = of("Name,Waist (cm),Knee (cm)\nA,28,36\nB,74,36\nC,70,36\nD,72,36\n")
    (refusal,) = shown.rows[0].refusals
    assert "inches" in refusal.next_step


def test_a_contradiction_stops_its_row_and_what_is_unusual_is_asked_about() -> None:
    shown = of("Name,Waist (cm),Full hip (cm)\nAnna,100,65\nBea,140,150\nCleo,74,98\n")
    assert [row.good for row in shown.rows] == [False, True, True]
    assert shown.rows[0].doubts[0].level == "stop"
    assert {doubt.level for doubt in shown.rows[1].doubts} == {"check"}
    assert not shown.rows[2].doubts
    assert (shown.good, shown.refused, shown.to_check) == (2, 1, 1)


def test_nothing_comes_out_before_all_is_answered() -> None:
    shown = of("Name,Hip\nAnna,98\n")
    assert not shown.ready
    with pytest.raises(InputError) as refusal:
        shown.sets(only_good=True)
    assert refusal.value.code == "import-not-ready"
    assert "Hip" in refusal.value.text()


def test_all_rows_or_the_good_ones_when_she_says_so() -> None:
    shown = of("Name,Bust (cm)\nAnna,94\nBea,7\n")
    with pytest.raises(InputError) as refusal:
        shown.sets()
    assert refusal.value.code == "import-rows-refused"
    assert [measures.name for measures in shown.sets(only_good=True)] == ["Anna"]
    with pytest.raises(InputError) as refusal:
        of("Name,Bust (cm)\nAnna,7\n").sets(only_good=True)
    assert refusal.value.code == "import-no-rows"


def test_lines_without_a_unit_are_not_read_until_it_is_said() -> None:
    text = "Name,Bust,Waist (cm)\nAnna,94,74\nBea,37,70\n"
    assert [value.key for value in of(text).rows[0].values] == ["waist_girth"]
    assert len(of(text, Answers("cm")).rows[0].values) == 2


def test_a_row_without_a_measure_is_refused() -> None:
    shown = of("Name,Town,Bust (cm),Waist (cm)\nAnna,X,94,74\nBea,Y,,\n")
    assert [refusal.code for refusal in shown.rows[1].refusals] == ["import-row-empty"]


def test_a_decimal_comma_in_a_comma_file_is_refused_not_shifted() -> None:
    shown = of("Name,Bust (cm),Waist (cm)\nAnna,94,5,74,5\n")
    assert "measures-csv-cells" in [refusal.code for refusal in shown.rows[0].refusals]


def test_about_fields_are_read() -> None:
    text = (
        "Name,Last name,Date,Measured by,Heel height (cm),population,kind,waist_level,waist_drop,unit,"
        "Size,Bust\nAnna,B,2026-03-02,Ines,4,women,form,lower,3,cm,12,94\n"
    )
    (measures,) = of(text).sets()
    assert measures == MeasureSet(
        "Anna B",
        {"bust_girth": Measure(940)},
        kind="form",
        waist_level="lower",
        waist_drop=30,
        population="women",
        label_size="12",
        circumstances=Circumstances("2026-03-02", "Ines", heel=40),
    )


@pytest.mark.parametrize(
    ("column", "cell", "code"),
    [
        ("Date", "03/04/2026", "date-unreadable"),
        ("kind", "dog", "measure-choice"),
        ("unit", "ell", "length-unit-unknown"),
        ("Name", "x" * 121, "text-too-long"),
        ("Notes", "bad\u0007", "text-not-plain"),
    ],
)
def test_bad_words_about_a_body_refuse_its_row(column: str, cell: str, code: str) -> None:
    shown = of(f"{column},Bust,Waist (cm)\n{cell},94 cm,74\n")
    assert code in [refusal.code for refusal in shown.rows[0].refusals]


def test_a_chart_gives_a_set_for_each_size() -> None:
    shown = of("Size;8;10\nBust (cm);80;84,5\nWaist (cm);62;66\n", source="studio")
    first, second = shown.sets()
    assert (first.name, first.kind, first.label_size) == ("studio 8", "chart", "8")
    assert second.get("bust_girth") == Measure(845, "chart")


def test_names_come_from_the_table_the_id_or_the_list() -> None:
    assert of("id,unit,bust_girth\nb7,cm,94\n").rows[0].name == "b7"
    assert of("Bust (cm),Waist (cm)\n94,74\n90,70\n").rows[1].name == "list, line 3"
    assert of("Bust: 94 cm\nWaist: 74 cm\n").rows[0].name == "list"
    assert of("Measure,Anna\nBust (cm),94\n").rows[0].name == "Anna"


def test_one_name_on_two_rows_is_asked_about() -> None:
    shown = of("Name,Bust (cm)\nAnna,94\nanna,90\n")
    assert [[doubt.code for doubt in row.doubts] for row in shown.rows] == [[], ["import-name-twice"]]
    assert shown.good == 2


def test_sides_and_fields_of_one_measure() -> None:
    text = (
        "id,unit,hip_girth,hip_girth.status,hip_girth.error,hip_depth@left,hip_depth@right,waist_girth,"
        "waist_girth.readings\nb1,cm,98,estimated,1.5,20,21,,74 & 75\n"
    )
    (measures,) = of(text).sets()
    assert measures.get("hip_girth") == Measure(980, "estimated", 15)
    assert (measures.value("hip_depth", "left"), measures.value("hip_depth", "right")) == (200, 210)
    assert measures.get("waist_girth").readings == (740, 750)


FULL = MeasureSet(
    "Form F",
    {"hip_girth": Measure(980, "estimated", 12.5, "from bust", "Ines", "ask"), "waist_girth": Measure(740)},
    kind="form",
    label_size="12",
)


def test_sets_of_our_own_come_through_unchanged() -> None:
    shown = of(json.dumps([set_to_data(FULL), set_to_data(FULL.without("hip_girth"))]))
    assert shown.sets() == (FULL, FULL.without("hip_girth"))
    bad = of(json.dumps([set_to_data(FULL), {"name": "B", "measures": {"hip_girth": 98}}, {"measures": {}}]))
    assert [row.good for row in bad.rows] == [True, False, False]
    assert bad.rows[1].refusals[0].code == "length-unit-missing"


def test_flat_objects_are_rows() -> None:
    (anna,) = of('[{"client": "Anna", "Bust (cm)": 94.5, "Waist (cm)": null}]').sets()
    assert anna == MeasureSet("Anna", {"bust_girth": Measure(945)})


def test_the_preview_is_plain_data() -> None:
    shown = of(CLIENTS + "Anna,7,x,98,\n")
    data = json.loads(json.dumps(preview_data(shown)))
    assert (data["good"], data["refused"], data["ready"]) == (2, 1, True)
    assert [row["good"] for row in data["rows"]] == [True, True, False]
    assert set_from_data(data["rows"][0]["measures"]) == shown.rows[0].measures
    assert data["lines"][2]["unit"] == "in"
    assert data["rows"][2]["refusals"][0]["code"] == "measure-impossible"
    open_data = preview_data(of("Name,Hip\nAnna,98\n"))
    assert open_data["questions"][0]["options"] == ("hip_girth", "top_hip_girth")


HELD = "Name,Bust (cm),Waist (cm),Full hip (cm),Wrist (cm),Stature (cm)\nAnna,92,74,98,20.4,166\n"


def test_a_named_population_asks_about_what_is_unlikely_but_stops_nothing() -> None:
    """A wrist of 20.4 cm on a bust of 92 cm: far outside, in women of the ANSUR II survey (2012)."""
    assert not of(HELD).rows[0].doubts
    shown = of(HELD, Answers(population="women"))
    (row,) = shown.rows
    assert any("wrist_girth" in doubt.keys for doubt in row.doubts)
    assert row.good and shown.to_check == 1
    assert row.measures is not None and row.measures.population == "women"


def test_a_long_list_says_that_it_was_not_held_against_anybody() -> None:
    rows = HELD.splitlines()
    long = "\n".join([rows[0], *[rows[1].replace("Anna", f"Anna {place}") for place in range(301)]])
    assert of(long).held
    shown = of(long, Answers(population="women"))
    assert not shown.held
    assert not any(row.doubts for row in shown.rows)


EXAMPLES = Path(__file__).parents[4] / "examples" / "measures"


@pytest.mark.parametrize(
    ("name", "answers", "sets"),
    [
        ("clients_in_inches.csv", Answers("in", (LineAnswer("Sleeve", "arm_length"),)), 3),
        ("size_chart_in_cm.csv", Answers(), 4),
        ("bodies.csv", Answers(), 4),
        ("form_a.json", Answers(), 1),
        ("marta_v.csv", Answers(), 1),
    ],
)
def test_the_examples_are_imported_and_say_that_they_are_invented(
    name: str, answers: Answers, sets: int
) -> None:
    text = (EXAMPLES / name).read_text(encoding="utf-8")
    assert "invented" in text.lower()
    shown = of(text, answers)
    assert (shown.questions, len(shown.sets())) == ((), sets)


def test_our_own_files_come_in_as_their_own_readers_read_them() -> None:
    for name in ("form_a.json", "marta_v.csv"):
        assert of((EXAMPLES / name).read_text(encoding="utf-8")).sets() == (read_measures(EXAMPLES / name),)
    rows = tuple(row.measures for row in read_bodies(EXAMPLES / "bodies.csv"))
    assert of((EXAMPLES / "bodies.csv").read_text(encoding="utf-8")).sets() == rows
