"""A pattern as data: lossless through JSON; anything else is refused whole, with words."""

import copy
import json
from dataclasses import replace
from pathlib import Path as FilePath
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.errors import InputError
from notchbook.geometry import Cubic, Line, Path, Point
from notchbook.pattern import (
    Allowance,
    CornerStyle,
    CutInstruction,
    Edge,
    EdgeUse,
    Fate,
    Grain,
    Group,
    InnerDart,
    InternalLine,
    Mark,
    Notch,
    Operation,
    Pattern,
    Piece,
    Place,
    Seam,
    frozen_map,
    pattern_from_data,
    pattern_to_data,
)
from notchbook.pattern.data import PATTERN_FORMAT
from support.hand_skirt import hand_skirt
from support.hand_upper import hand_upper

GOLDEN = FilePath(__file__).parents[2] / "golden"

numbers = st.floats(-3000.0, 3000.0)
points = st.builds(Point, numbers, numbers)
roles = st.lists(st.from_regex(r"[a-z]{1,6}", fullmatch=True), min_size=3, max_size=6, unique=True)
texts = st.text(max_size=12)


@st.composite
def pieces(draw: st.DrawFn) -> Piece:
    """A piece of any shape (also a crossed one): data must carry what it is given."""
    words = draw(roles)
    corners = draw(st.lists(points, min_size=len(words), max_size=len(words), unique=True))
    outline = []
    for index, word in enumerate(words):
        start, end = corners[index], corners[(index + 1) % len(corners)]
        following = words[(index + 1) % len(words)]
        segment = Cubic(start, draw(points), draw(points), end) if draw(st.booleans()) else Line(start, end)
        outline.append(
            Edge(
                f"a.b/{word}",
                Path.of(segment),
                f"a.b/{word}/at",
                f"a.b/{following}/at",
                draw(st.sampled_from(("seam", "fold", "hem", "plain"))),
            )
        )
    return Piece(
        "a.b",
        draw(texts),
        tuple(outline),
        lines=(
            InternalLine("a.b/line", Path.line(corners[0], corners[1]), "placement"),
            InternalLine("a.b/leg", Path.line(corners[1], corners[0]), "dart_leg"),
        ),
        marks=(Mark("a.b/mark", draw(points), "drill"),),
        inner_darts=draw(
            st.sampled_from(
                ((), (InnerDart("a.b/in", "a.b/line", "a.b/leg", "a.b/mark", "a.b/mark", "side_leg"),))
            )
        ),
        grain=Grain(draw(st.floats(-180, 180)), draw(st.booleans())),
        cut=draw(st.sampled_from(("fold", "pair", "single"))),
        side=draw(st.sampled_from(("both", "left", "right"))),
        instructions=(CutInstruction(draw(texts), draw(st.integers(0, 9))),),
        rule=draw(st.none() | texts),
    )


@st.composite
def patterns(draw: st.DrawFn) -> Pattern:
    piece = draw(pieces())
    first, second = piece.outline[0], piece.outline[1]
    seam = Seam(
        "a/seam",
        (EdgeUse(first.name, first.start),),
        (EdgeUse(second.name, second.end, "left"),),
        ease=draw(numbers),
        ease_between=draw(st.sampled_from((None, ("start", "n"), ("n", "end")))),
    )
    folded: CornerStyle = "folded"
    notch = Notch("a.b/n", Place(first.name, first.start, draw(numbers), "fraction"), "double", "a/seam", "x")
    return Pattern(
        pieces=frozen_map({piece.name: piece}),
        seams=frozen_map({seam.name: seam}),
        notches=frozen_map({notch.name: notch}),
        groups=frozen_map({"a.b/group": Group((first.name, second.name), "cut_1")}),
        fates=frozen_map({"a.b/gone": Fate("merged", (first.name,), "join_1", draw(texts))}),
        allowances=frozen_map({first.name: Allowance("plain", draw(st.none() | numbers))}),
        corners=frozen_map([(first.start, folded)]),
        materials=frozen_map({"self": draw(texts)}),
    )


@settings(max_examples=60, deadline=None)
@given(patterns())
def test_a_pattern_comes_back_from_json_as_it_was(pattern: Pattern) -> None:
    text = json.dumps(pattern_to_data(pattern))
    again = pattern_from_data(json.loads(text))
    assert again == pattern
    assert json.dumps(pattern_to_data(again)) == text


def test_the_hand_made_skirt_comes_back_as_it_was() -> None:
    pattern = hand_skirt()
    again = pattern_from_data(json.loads(json.dumps(pattern_to_data(pattern))))
    assert again == pattern
    assert list(again.edges) == list(pattern.edges)


def test_a_pattern_without_new_things_is_written_in_the_first_form() -> None:
    """Releases that know no inner darts read it as it is."""
    data = pattern_to_data(hand_skirt())
    assert data["format"] == 1
    assert not {"inner_darts", "ease_between"} & {
        key for part in (*data["pieces"], *data["seams"]) for key in part
    }


def test_inner_darts_and_the_place_of_ease_need_the_second_form() -> None:
    upper = hand_upper()
    assert pattern_to_data(upper)["format"] == 2
    front = replace(upper.pieces["top.front"], inner_darts=())
    assert pattern_to_data(upper.with_pieces(front))["format"] == 2
    plain = upper.with_seams(*(replace(seam, ease_between=None) for seam in upper.seams.values()))
    assert pattern_to_data(plain)["format"] == 2
    assert pattern_to_data(plain.with_pieces(front))["format"] == 2, "the legs are lines of a new kind"
    without_legs = replace(front, lines=tuple(line for line in front.lines if line.kind != "dart_leg"))
    assert pattern_to_data(plain.with_pieces(without_legs))["format"] == 1


def test_a_mark_that_is_measured_from_needs_the_second_form() -> None:
    skirt = hand_skirt()
    piece = next(iter(skirt.pieces.values()))
    marked = replace(piece, marks=(Mark(f"{piece.name}/crown", piece.outline[0].path.start, "datum"),))
    data = pattern_to_data(skirt.with_pieces(marked))
    assert data["format"] == 2
    assert pattern_to_data(pattern_from_data(data)) == data


def test_what_is_new_for_closures_needs_the_fourth_form() -> None:
    skirt = hand_skirt()
    piece = next(iter(skirt.pieces.values()))
    place = piece.outline[0].path.start
    button = replace(piece, marks=(Mark(f"{piece.name}/button", place, "button"),))
    hole = InternalLine(f"{piece.name}/hole", Path.line(place, place + Point(20.0, 0.0)), "buttonhole")
    order = Operation("closing/buttons", "finish", "Sew the buttons on.", (f"{piece.name}/button",))
    for changed in (
        skirt.with_pieces(button),
        skirt.with_pieces(replace(piece, lines=(hole,))),
        skirt.with_operations(order),
    ):
        data = json.loads(json.dumps(pattern_to_data(changed)))
        assert data["format"] == 4
        assert pattern_from_data(data) == changed


@pytest.mark.parametrize("stage", ["sewing", 7, None])
def test_a_line_of_the_order_in_no_stage_is_refused(stage: object) -> None:
    data = pattern_to_data(hand_skirt())
    data["operations"] = [{"name": "a/b", "stage": stage, "text": "Press.", "at": [], "after": []}]
    with pytest.raises(InputError, match="pattern"):
        pattern_from_data(data)


@pytest.mark.parametrize("name", sorted(path.name for path in GOLDEN.glob("*.pattern.json")))
def test_stored_patterns_of_every_form_are_read(name: str) -> None:
    text = (GOLDEN / name).read_text(encoding="utf-8")
    assert pattern_to_data(pattern_from_data(json.loads(text))) == json.loads(text)


def test_a_stored_pattern_of_each_form_is_there() -> None:
    forms = {json.loads(path.read_text(encoding="utf-8"))["format"] for path in GOLDEN.glob("*.pattern.json")}
    assert forms == set(range(1, PATTERN_FORMAT + 1))


def test_the_first_form_is_read_without_what_it_cannot_say() -> None:
    read = pattern_from_data(pattern_to_data(hand_skirt()))
    assert all(piece.inner_darts == () for piece in read.pieces.values())
    assert all(seam.ease_between is None for seam in read.seams.values())


UPPER_DAMAGE: list[tuple[tuple[str | int, ...], object]] = [
    (("pieces", 0, "inner_darts"), 5),
    (("pieces", 0, "inner_darts", 0, "center_leg"), 3),
    (("pieces", 0, "inner_darts", 0, "fold_toward"), "first_leg"),
    (("pieces", 0, "inner_darts", 0, "depth"), 3),
    (("pieces", 0, "lines", 0, "kind"), "leg"),
    (("seams", 2, "ease_between"), "start"),
    (("seams", 2, "ease_between"), ["start"]),
    (("seams", 2, "ease_between"), ["start", 3]),
    (("seams", 2, "ease_between"), {"start": "end"}),
]


@pytest.mark.parametrize(("path", "value"), UPPER_DAMAGE, ids=lambda item: str(item)[:60])
def test_damaged_inner_darts_and_places_of_ease_are_refused(
    path: tuple[str | int, ...], value: object
) -> None:
    data = copy.deepcopy(pattern_to_data(hand_upper()))
    target: Any = data
    for key in path[:-1]:
        target = target[key]
    target[path[-1]] = value
    assert refused_code(data) == "pattern-data-damaged"


def refused_code(data: Any) -> str:
    with pytest.raises(InputError) as refused:
        pattern_from_data(data)
    assert refused.value.text() and refused.value.next_step()
    return refused.value.code


@pytest.mark.parametrize("form", [None, 0, PATTERN_FORMAT + 1, "1", True])
def test_another_form_is_refused(form: object) -> None:
    assert refused_code({**pattern_to_data(hand_skirt()), "format": form}) == "pattern-format-unknown"


@pytest.mark.parametrize("data", [[], "skirt", 3, None])
def test_what_is_no_mapping_is_refused(data: object) -> None:
    assert refused_code(data) == "pattern-data-damaged"


DAMAGE: list[tuple[tuple[str | int, ...], object]] = [
    (("pieces",), None),
    (("pieces",), {"skirt.front": 1}),
    (("pieces", 0, "name"), "front"),
    (("pieces", 0, "title"), 7),
    (("pieces", 0, "cut"), "twice"),
    (("pieces", 0, "side"), "wrong"),
    (("pieces", 0, "outline"), []),
    (("pieces", 0, "outline", 0, "kind"), "zip"),
    (("pieces", 0, "outline", 0, "end"), "skirt.front/elsewhere"),
    (("pieces", 0, "outline", 0, "path", 1), ["L", 5.0, 5.0]),
    (("pieces", 0, "outline", 0, "path", 1), ["L", "5", 5.0]),
    (("pieces", 0, "outline", 0, "path", 1), ["L", float("nan"), 5.0]),
    (("pieces", 0, "intakes", 0, "kind"), "pleat"),
    (("pieces", 0, "intakes", 0, "depth"), 3),
    (("pieces", 0, "grain", "degrees"), "90"),
    (("pieces", 0, "grain", "degrees"), float("inf")),
    (("pieces", 0, "grain", "one_way"), 1),
    (("pieces", 0, "instructions", 0, "times"), 1.5),
    (("pieces", 0, "instructions", 0, "times"), True),
    (("pieces", 1, "name"), "skirt.front"),
    (("seams", 0, "ease"), "none"),
    (("seams", 0, "first", 0, "side"), "front"),
    (("seams", 1, "name"), "skirt/side_seam"),
    (("notches", 0, "kind"), "triple"),
    (("notches", 0, "place", "amount"), None),
    (("notches", 0, "place", "measure"), "percent"),
    (("groups", "skirt.front/waist", "members"), 5),
    (("groups", "skirt.front/waist", "members"), [1, 2]),
    (("allowances", "skirt.front/hem", "width"), "wide"),
    (("corners",), {"skirt.front/hem_side": "round"}),
    (("corners",), {"hem": "mitre"}),
    (("fates",), {"skirt.front/gone": {"kind": "eaten", "into": [], "by": "x", "reason": "y"}}),
    (("materials",), {"self": 3}),
]


@pytest.mark.parametrize(("path", "value"), DAMAGE, ids=lambda item: str(item)[:60])
def test_damaged_data_are_refused_with_words(path: tuple[str | int, ...], value: object) -> None:
    data = copy.deepcopy(pattern_to_data(hand_skirt()))
    target: Any = data
    for key in path[:-1]:
        target = target[key]
    target[path[-1]] = value
    assert refused_code(data) == "pattern-data-damaged"


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_a_missing_part_is_refused(data: st.DataObject) -> None:
    """Whatever key is taken out, wherever: refused or, where it was optional, never a traceback."""
    made = copy.deepcopy(pattern_to_data(hand_skirt()))
    target: Any = made
    for _ in range(6):
        keys = list(target) if isinstance(target, dict) else list(range(len(target)))
        key = data.draw(st.sampled_from(keys))
        if not isinstance(target[key], (dict, list)) or not target[key] or data.draw(st.booleans()):
            if isinstance(target, dict) and key != "format":
                del target[key]
            break
        target = target[key]
    try:
        pattern_from_data(made)
    except InputError as error:
        assert error.code == "pattern-data-damaged"
