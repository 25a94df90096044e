"""Rows in another unit, rows that the book has, hints that are never applied. All lists are invented."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.body.importing import (
    Answers,
    Preview,
    RowAnswer,
    fold_name,
    preview,
    propose,
    read_line_answer,
    read_row_answer,
    read_table,
)
from notchbook.body.importing.hints import cell_hint
from notchbook.errors import InputError

HEAD = "Name,Bust (in),Waist (in),Full hip (in)\n"
INCHES = "Anna,37,29,39\nBea,38,30,40\n"


def of(text: str, answers: Answers | None = None, known: dict[str, str] | None = None) -> Preview:
    table = read_table(text)
    return preview(table, propose(table, answers), "list", known)


def test_a_row_in_centimeters_among_inches_is_one_question() -> None:
    shown = of(f"{HEAD}{INCHES}Cleo,94,74,98\n")
    (question,) = shown.questions
    assert (question.about, question.rows, question.options) == ("row_unit", (4,), ("cm", "in"))
    assert question.words.startswith("Line 4 looks like centimeters, and inches are said")
    cleo = shown.rows[2]
    assert (cleo.state, cleo.refusals, cleo.name, shown.ready) == ("asked", (), "Cleo", False)
    with pytest.raises(InputError) as refusal:
        shown.sets(only_good=True)
    assert refusal.value.code == "import-not-ready"


def test_the_answer_reads_the_row_in_that_unit() -> None:
    text = f"{HEAD}{INCHES}Cleo,94,74,98\n"
    shown = of(text, Answers(rows=(RowAnswer(4, "cm"),)))
    assert shown.ready
    assert shown.rows[2].measures is not None
    assert shown.rows[2].measures.value("waist_girth") == 740
    assert shown.rows[0].measures is not None
    assert shown.rows[0].measures.value("waist_girth") == pytest.approx(29 * 25.4)
    as_said = of(text, Answers(rows=(RowAnswer(4, "in"),)))
    assert (as_said.questions, as_said.rows[2].state) == ((), "refused")
    left = of(text, Answers(rows=(RowAnswer(4, choice="skip"),)))
    assert (left.ready, left.left_out, len(left.sets())) == (True, 1, 2)


def test_the_reverse_and_rows_alike_together() -> None:
    text = "Name,unit,Bust,Waist\nA,cm,94,74\nB,cm,37,29\nC,cm,38 1/2,30\nD,mm,940,740\n"
    (question,) = of(text).questions
    assert (question.rows, question.options) == ((3, 4), ("in", "cm"))
    assert question.words.startswith("Lines 3, 4 look like inches")


@pytest.mark.parametrize(
    "row",
    [
        "Cleo,94,,",  # one number alone may be a slip of a digit
        "Cleo,94,29,39",
        "Cleo,94 cm,74 cm,98 cm",
        "Cleo,3.7,2.9,3.9",
    ],
)
def test_what_is_no_other_unit_is_not_asked_about(row: str) -> None:
    assert "row_unit" not in [question.about for question in of(f"{HEAD}{INCHES}{row}\n").questions]


def test_names_of_the_book_are_asked_about_once_for_all_or_row_by_row() -> None:
    text = "Name,Bust (cm)\nÁnna B.,94\nBea,90\nCleo,91\n"
    known = {fold_name("anna  b."): "M-101", fold_name("BEA"): "M-102"}
    shown = of(text, known=known)
    (question,) = shown.questions
    assert (question.about, question.rows, question.options) == ("again", (2, 3), ("skip", "add"))
    assert "“Bea”, as M-102" in question.words
    assert ([row.in_book for row in shown.rows], shown.ready) == (["M-101", "M-102", ""], False)
    skipped = of(text, Answers(again="skip"), known)
    assert [measures.name for measures in skipped.sets()] == ["Cleo"]
    both = of(text, Answers(rows=(RowAnswer(2, choice="add"),), again="skip"), known)
    assert [measures.name for measures in both.sets()] == ["Ánna B.", "Cleo"]
    assert len(of(text, Answers(again="add"), known).sets()) == 3
    with pytest.raises(InputError) as refusal:
        of("Name,Bust (cm)\nBea,90\n", Answers(again="skip"), known).sets()
    assert refusal.value.code == "import-all-left-out"


def test_a_refused_row_is_not_asked_about() -> None:
    text = "Name,Bust (cm),Waist (cm)\nAnna,94,74\nBea,9,70\n"
    shown = of(text, known={"bea": "M-102"})
    assert (shown.questions, shown.rows[1].in_book) == ((), "M-102")


def test_a_refused_row_that_is_left_out_is_not_refused() -> None:
    shown = of("Name,Bust (cm)\nAnna,94\nBea,9\n", Answers(rows=(RowAnswer(3, choice="skip"),)))
    assert (shown.refused, shown.left_out, len(shown.sets())) == (0, 1, 1)


def test_sets_of_our_own_are_asked_about_too() -> None:
    text = '[{"name": "Anna", "unit": "cm", "measures": {"bust_girth": 94}}]'
    assert [question.about for question in of(text, known={"anna": "M-7"}).questions] == ["again"]
    assert of(text, Answers(rows=(RowAnswer(1, choice="add"),)), {"anna": "M-7"}).ready


def test_sizes_of_a_chart_are_stored_under_its_name() -> None:
    assert not of("Size;8;10\nBust (cm);80;84\n", known={"list 8": "M-1"}).questions


@given(st.text(max_size=30))
def test_folding_a_name_twice_changes_nothing(name: str) -> None:
    assert fold_name(fold_name(name)) == fold_name(name)
    assert fold_name(f"  {name.upper()} ") == fold_name(name.upper())


@pytest.mark.parametrize(
    ("key", "text", "unit", "words"),
    [
        ("bust_girth", "3612", "in", '36 1/2"'),
        ("bust_girth", "36 12", "in", '36 1/2"'),
        ("bust_girth", "3738", "in", '37 3/8"'),
        ("waist_girth", "29116", "in", '29 1/16"'),
        ("height", "1,64", "cm", "164.0 cm"),
        ("height", "1.64", "in", "meters"),
    ],
)
def test_what_was_probably_meant_is_hinted_at(key: str, text: str, unit: str, words: str) -> None:
    answers = Answers(lines=(read_line_answer(f"x={key}:{unit}"),))
    shown = of(f"Name;x;Neck girth (cm)\nAnna;{text};36\n", answers)
    (refusal,) = shown.rows[0].refusals
    assert words in refusal.next_step
    assert [value.key for value in shown.rows[0].values] == ["neck_girth"], "never applied"


@pytest.mark.parametrize(
    ("key", "text"), [("bust_girth", "3"), ("bust_girth", "3622"), ("bust_girth", "9999"), ("weight", "1.64")]
)
def test_what_nobody_can_have_meant_gets_no_hint(key: str, text: str) -> None:
    assert cell_hint(key, text, "in") == ""


def test_a_column_in_meters_is_named_as_such() -> None:
    (question,) = of("Name,Height\nAnna,1.64\nBea,1.70\n").questions
    assert "look like meters" in question.words


@pytest.mark.parametrize("text", ["5ft 6in", "5' 6\"", "5'6", "5 ft 6 in"])
@pytest.mark.parametrize("header", ["Height", "Height (in)", "Height (ft)"])
def test_feet_and_inches_are_stored(header: str, text: str) -> None:
    cell = text.replace('"', '""')
    shown = of(f'Name,{header},Bust (in)\nAnna,"{cell}",37\n')
    assert shown.questions == ()
    # A foot is 12 in of 25.4 mm: international yard and pound agreement of 1959.
    assert shown.sets()[0].value("height") == pytest.approx(66 * 25.4)


def test_a_row_with_a_cell_that_waits_is_not_good() -> None:
    shown = of("Name,Height,Bust (cm)\nAnna,77777,94\nBea,,90\n")
    assert [row.state for row in shown.rows] == ["asked", "good"]
    assert shown.rows[0].unread == ("Height",)


def test_a_question_with_one_candidate_asks_whether_it_is_that() -> None:
    (question,) = of("Name,CB length (cm)\nAnna,41\n").questions
    assert question.words.startswith("“CB length (cm)”: is it back_waist_length")
    assert "which" not in question.words


def test_a_word_of_the_trade_as_a_target_names_the_keys() -> None:
    with pytest.raises(InputError) as refusal:
        read_line_answer("x=Sleeve:cm")
    assert refusal.value.code == "import-target-word"
    assert "arm_length or nape_to_wrist" in refusal.value.next_step()


def test_the_chest_of_men_is_sure() -> None:
    text = "Name,Chest (cm),Shoulder (cm)\nAbe,101,15\n"
    assert [one.line for one in of(text).questions] == ["Chest (cm)", "Shoulder (cm)"]
    women = of(text, Answers(population="women"))
    assert women.questions[0].line == "Chest (cm)"
    men = of(text, Answers(population="men"))
    assert [one.line for one in men.questions] == ["Shoulder (cm)"]
    assert men.mapping.lines[1].target == "bust_girth"


@pytest.mark.parametrize("text", ["", "6", "=cm", "6=", "x=cm", "6=ft", "6=leave", "9999999999=cm"])
def test_answers_about_a_row_that_say_nothing_are_refused(text: str) -> None:
    with pytest.raises(InputError) as refusal:
        read_row_answer(text)
    assert refusal.value.code == "import-row-malformed"


def test_answers_about_rows() -> None:
    assert read_row_answer(" 6 = CM ") == RowAnswer(6, unit="cm")
    assert read_row_answer("6=skip") == RowAnswer(6, choice="skip")
    both = Answers(rows=(RowAnswer(3, "cm"), RowAnswer(3, choice="add")))
    mapping = propose(read_table("Name,Bust (in)\nA,37\nB,94\n"), both)
    assert mapping.rows == {3: RowAnswer(3, "cm", "add")}
