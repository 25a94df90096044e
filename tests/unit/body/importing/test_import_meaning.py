"""What headers and numbers of foreign tables mean, and what is asked instead of guessed."""

import tomllib
from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.body import measure_table
from notchbook.body.files.body_columns import ABOUT_COLUMNS
from notchbook.body.importing import Answers, LineAnswer, TableMapping, propose, read_line_answer, read_table
from notchbook.body.importing.header_words import header_meaning, header_words, plain_words
from notchbook.body.importing.unit_words import read_unit, take_unit
from notchbook.errors import InputError

WORDS = tomllib.loads(
    files("notchbook.body.importing").joinpath("header_words.toml").read_text(encoding="utf-8")
)


def of(text: str, answers: Answers | None = None) -> TableMapping:
    return propose(read_table(text), answers)


def asked(mapping: TableMapping) -> list[tuple[str, str]]:
    return [(question.line, question.about) for question in mapping.open_questions]


def test_the_table_of_words_names_only_what_exists() -> None:
    known = {*measure_table(), *ABOUT_COLUMNS}
    targets = {target for chapter in ("measures", "about") for target in WORDS[chapter]}
    targets |= {target for group in WORDS["asked"].values() for target in group}
    assert targets <= known
    assert set(measure_table()) <= {target for found in header_words().meanings.values() for target in found}


def test_no_word_means_two_things() -> None:
    seen: dict[str, str] = {}
    for chapter in ("measures", "about"):
        for target, words in WORDS[chapter].items():
            for word in words:
                assert seen.setdefault(plain_words(word), target) == target, word
    both = set(seen) & {plain_words(word) for word in WORDS["asked"]}
    assert not both, "sure and to be asked at once"
    assert not (set(seen) | {plain_words(word) for word in WORDS["asked"]}) & header_words().left_out


def test_labels_of_the_house_stay_what_they_are() -> None:
    """A foreign word must not take a label of the measure table, except where it is asked about."""
    for key, entry in measure_table().items():
        meaning = header_meaning(entry.label)
        assert key in meaning.targets, entry.label


@pytest.mark.parametrize(
    ("header", "target"),
    [
        ("Bust", "bust_girth"),
        ("BUST GIRTH", "bust_girth"),
        ("Bust circumference", "bust_girth"),
        ("Full bust:", "bust_girth"),
        ("Nape-to-waist", "back_waist_length"),
        ("Inseam", "inside_leg"),
        ("HSP to bust point", "neck_to_bust_point"),
        ("Centre front length", "center_front_length"),
        ("Hüfttiefe", "hip_depth"),
        ("tour de taille", "waist_girth"),
        ("contorno de muñeca", "wrist_girth"),
        ("heupwijdte", "hip_girth"),
        ("hip_depth@left", "hip_depth@left"),
        ("hip_girth.error", "hip_girth.error"),
        ("Left thigh", "thigh_girth@left"),
        ("Bicep (R)", "upper_arm_girth@right"),
        ("Client name", "name"),
        ("Measured by", "taken_by"),
    ],
)
def test_words_of_the_trade_are_sure(header: str, target: str) -> None:
    meaning = header_meaning(header)
    assert (meaning.targets, meaning.sure) == ((target,), header != "Bicep (R)" or meaning.sure)


@pytest.mark.parametrize("header", ["Hip", "Chest", "Shoulder", "Back length", "Neck", "Sleeve", "CB length"])
def test_words_with_more_uses_are_asked_about(header: str) -> None:
    meaning = header_meaning(header)
    assert meaning.targets and not meaning.sure


def test_what_stands_in_brackets_may_change_the_meaning() -> None:
    meaning = header_meaning("Waist (where the skirt sits)")
    assert (meaning.targets, meaning.sure) == (("waist_girth",), False)


@pytest.mark.parametrize(
    ("header", "rest", "unit"),
    [
        ("Bust (cm)", "Bust", "cm"),
        ("Hip in.", "Hip", "in"),
        ("Bust in cm", "Bust", "cm"),
        ("waist_mm", "waist", "mm"),
        ("Waist [inches]", "Waist", "in"),
        ("Waist / cm", "Waist", "cm"),
        ('Bust "', "Bust", "in"),
        ("Slope (°)", "Slope", "deg"),
        ("Weight, kg", "Weight", "kg"),
        ("Taille (Zoll)", "Taille", "in"),
        ("Height (m)", "Height", ""),
        ("Size M", "Size M", ""),
        ("Bust", "Bust", ""),
    ],
)
def test_units_in_headers(header: str, rest: str, unit: str) -> None:
    words, found = take_unit(header)
    assert (words.strip(), found.unit) == (rest, unit)


def test_a_unit_that_is_not_read_is_told() -> None:
    assert read_unit("lb").said == "lb"
    mapping = of("Name,Weight (lb),Height (m)\nAnna,130,1.68\n")
    assert asked(mapping) == [("Weight (lb)", "unit"), ("Height (m)", "unit")]
    assert "m is none of mm, cm, in" in mapping.open_questions[1].words
    assert asked(of("Name,Bust,Height (m)\nAnna,94,1.68\n", Answers("cm"))) == [("Height (m)", "unit")]


def test_units_in_the_header_the_row_the_cell_or_below() -> None:
    for text in (
        "Name,Bust (cm),Waist (cm)\nAnna,94,74\n",
        "Name,Bust,Waist\n,cm,cm\nAnna,94,74\n",
        "Name,unit,Bust,Waist\nAnna,cm,94,74\n",
        'Name,Bust,Waist\nAnna,94 cm,29"\n',
        "Measure,Value,Unit\nBust,94,cm\nWaist,74,cm\n",
        "Bust: 94 cm\nWaist: 74,5 cm\n",
    ):
        assert not of(text).open_questions, text


@pytest.mark.parametrize(
    ("values", "unit"), [("94,37 1/2", ""), ("94,96", "cm"), ("36,38 1/2", "in"), ("940,960", "mm")]
)
def test_a_unit_that_nobody_says_is_proposed_and_asked(values: str, unit: str) -> None:
    first, second = values.split(",")
    mapping = of(f"Name,Bust\nAnna,{first}\nBea,{second}\n")
    (line,) = [line for line in mapping.lines if line.target == "bust_girth"]
    assert (line.unit, line.unit_sure) == (unit, False)
    assert asked(mapping) == [("Bust", "unit")]


def test_mixed_units_in_a_column_name_the_rows() -> None:
    mapping = of("Name,Bust\nA,94\nB,96\nC,37\nD,98\nE,102\n")
    assert mapping.open_questions[0].rows == (4,)
    mapping = of('Name,Bust (cm)\nA,94\nB,37"\nC,98\n')
    assert mapping.open_questions[0].rows == (3,)
    mapping = of('Name,Bust\nA,94\nB,37"\nC,98\n')
    assert mapping.open_questions[0].rows == (2, 4)


def test_a_header_that_disagrees_with_its_values_is_asked_about() -> None:
    mapping = of("Name,Bust (cm)\nA,37\nB,38 1/2\nC,41\n")
    assert asked(mapping) == [("Bust (cm)", "unit")]
    assert "look like inches" in mapping.open_questions[0].words
    assert not of("Name,Bust (in)\nA,37\nB,38 1/2\nC,41\n").open_questions


def test_units_that_contradict_each_other_are_asked_about() -> None:
    mapping = of("Name,unit,Bust (cm)\nAnna,cm,94\nBea,in,37\n")
    assert asked(mapping) == [("Bust (cm)", "unit")]
    assert "cm is said, and elsewhere in" in mapping.open_questions[0].words
    assert asked(of("Measure,Value,Unit\nBust (cm),37,in\nWaist,74,cm\n")) == [("Bust (cm)", "unit")]
    assert not of("Name,unit,Bust (cm)\nAnna,cm,94\n").open_questions


def test_the_corner_of_a_chart_may_name_the_unit() -> None:
    mapping = of("Measurements in cm,S,M\nBust,84,92\nWaist (in),27,29\nWeight,60,62\n")
    assert [(line.unit, line.unit_sure) for line in mapping.lines] == [
        ("cm", True),
        ("in", True),
        ("kg", False),
    ]


def test_small_letters_alone_are_our_own_words() -> None:
    assert header_meaning("heel").targets == ("heel",)
    assert header_meaning("Heel (cm)").targets == ("heel", "heel_girth")
    assert not header_meaning("Heel").sure
    assert header_meaning("Hip_Girth").own
    for name in ABOUT_COLUMNS:
        assert header_meaning(name.title()).targets[0] == name, name


def test_degrees_and_kilograms_are_not_assumed_in_a_foreign_list() -> None:
    assert asked(of("Name,Weight,Bust (cm)\nAnna,130,94\n")) == [("Weight", "unit")]
    assert not of("Name,Weight (kg),Shoulder slope (deg)\nAnna,62,23\n").open_questions
    # In a table with keys of ours, weight means ours.
    assert not of("id,unit,bust_girth,weight\nb1,cm,94,62\n").open_questions
    mapping = of("Name,Weight,Bust (cm)\nAnna,62,94\n", Answers(lines=(read_line_answer("Weight=:kg"),)))
    assert not mapping.open_questions


def test_unknown_columns_are_asked_about_when_they_hold_numbers() -> None:
    mapping = of("Name,Bust (cm),qqq,Hair,Email\nAnna,94,7,red,a@b\n")
    assert asked(mapping) == [("qqq", "measure")]
    kept = {line.name: line.target for line in mapping.lines if not line.left_out}
    assert kept == {"Name": "name", "Bust (cm)": "bust_girth"}
    assert not of("Name,Bust (cm),qqq\nAnna,94,7\n", Answers(skip_unknown=True)).open_questions


def test_a_word_that_is_nearly_known_is_offered_not_taken() -> None:
    mapping = of("Name,Wiast (cm)\nAnna,74\n")
    (question,) = mapping.open_questions
    assert question.about == "measure"
    assert "waist_girth" in question.options


def test_words_that_are_not_known_are_not_compared_one_by_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """Found by the fuzzer: thousands of unknown rows were each compared with every known key."""

    def never(*_words: object) -> None:
        raise AssertionError("compared by likeness")

    monkeypatch.setattr("notchbook.units.nearest.nearest_name", never)
    assert not header_meaning("an unknown word, not compared").targets
    rows = "".join(f"word {place},{place}\n" for place in range(300))
    assert len(of(f"Bust,94\n{rows}").open_questions) == 301


def test_a_question_about_many_lines_names_a_few() -> None:
    mapping = of("Name" + ",Bust (cm)" * 40 + "\nAnna" + ",94" * 40 + "\n")
    (question,) = mapping.open_questions
    assert (question.about, len(question.options)) == ("twice", 6)


def test_answers_are_put_in() -> None:
    text = "Name,Hip,Chest,Age\nAnna,98,94,30\n"
    assert asked(of(text)) == [("Hip", "measure"), ("Chest", "measure")]
    said = Answers("cm", (read_line_answer("hip=hip_girth"), read_line_answer("#3=bust_girth:cm")))
    mapping = of(text, said)
    assert not mapping.open_questions
    assert [line.target for line in mapping.lines] == ["name", "hip_girth", "bust_girth", ""]
    assert not of(text, Answers("cm", (LineAnswer("Hip", "hip_girth"),), skip=("Chest",))).open_questions


def test_the_unit_for_all_does_not_go_over_what_the_header_says() -> None:
    mapping = of("Name,Bust (in),Full hip\nAnna,37,98\n", Answers("cm"))
    assert [line.unit for line in mapping.lines] == ["", "in", "cm"]


def test_two_columns_for_one_measure_are_asked_about_but_names_join() -> None:
    mapping = of("First name,Last name,Bust (cm),Bust (cm)\nAnna,B,94,95\n")
    assert asked(mapping) == [("Bust (cm) (2)", "twice")]
    assert not of(
        "First name,Last name,Bust (cm),Bust (cm)\nAnna,B,94,95\n", Answers(skip=("Bust (cm) (2)",))
    ).open_questions


def test_sizes_over_columns_make_a_chart() -> None:
    assert of("Size,8,10\nBust (cm),80,84\n").kind == "chart"
    assert of("Measure,Anna,Bea\nBust (cm),80,84\n").kind == "body"
    assert of("Measure,Anna,Bea\nBust (cm),80,84\n", Answers(kind="form")).kind == "form"


def test_a_line_above_the_table_proposes_its_unit_but_does_not_settle_it() -> None:
    mapping = of("All measures in cm,,\nName,Knee,Ankle,Weight\nAnna,9,9,62\n")
    units = [(line.unit, line.unit_sure) for line in mapping.lines[1:]]
    assert units == [("cm", False), ("cm", False), ("kg", False)]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("Bust", "import-answer-malformed"),
        ("=bust_girth", "import-answer-malformed"),
        ("Bust=", "import-answer-malformed"),
        ("Bust=bust_girht", "measure-unknown"),
        ("Bust=bust_girth:ft", "length-unit-unknown"),
        ("Bust=bust_girth.colour", "field-unknown"),
        ("Bust=height@left", "measure-not-sided"),
    ],
)
def test_answers_that_say_nothing_are_refused(text: str, code: str) -> None:
    with pytest.raises(InputError) as refusal:
        read_line_answer(text)
    assert refusal.value.code == code
    assert refusal.value.text()


def test_an_answer_about_a_column_that_is_not_there_is_refused() -> None:
    for answers in (Answers(skip=("Bsut",)), Answers(lines=(LineAnswer("Bsut", "bust_girth"),))):
        with pytest.raises(InputError) as refusal:
            of("Name,Bust\nAnna,94\n", answers)
        assert refusal.value.code == "import-line-unknown"
        assert "Did you mean Bust?" in refusal.value.next_step(), "in the letters of the table"


@pytest.mark.parametrize("answer", ["Bust=bust_girth:kg", "Bust=:deg", "Weight=:cm"])
def test_a_unit_that_a_measure_cannot_be_in_is_refused(answer: str) -> None:
    with pytest.raises(InputError) as refusal:
        of("Name,Bust,Weight\nAnna,94,62\n", Answers(lines=(read_line_answer(answer),)))
    assert refusal.value.code == "measure-unit"


def test_an_answer_may_hold_an_equals_sign_in_the_name() -> None:
    assert read_line_answer("a=b=bust_girth:in") == LineAnswer("a=b", "bust_girth", "in")


@given(st.text(max_size=150))
def test_any_header_has_some_meaning_or_none(header: str) -> None:
    meaning = header_meaning(header)
    assert set(meaning.targets) <= {*meaning.targets}
    assert not (meaning.sure and len(meaning.targets) > 1)
