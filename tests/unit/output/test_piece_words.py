"""Words at the places of a piece: what is named, where it stands, and that it can be read."""

from functools import cache

import pytest
import shapely

from house import ROOT
from lower_sheets import lower_bodies
from notchbook.app.picturing_blocks import pictured_block
from notchbook.app.rack.styles import rack
from notchbook.body import read_measures
from notchbook.finish import CutPiece, finish, production_table
from notchbook.output.draw_piece import draw_piece
from notchbook.output.free_place import readable
from notchbook.output.label_lines import allowance_words
from notchbook.output.pen import Text
from notchbook.output.piece_words import line_words, named_edges, named_lines, notch_words
from notchbook.pattern import Pattern
from notchbook.recipe import replay
from support.cut_shapes import cut_one, polygon, polygon_piece
from support.list_pen import ListPen, text_box
from support.papers import INFO, skirt_pieces
from support.yoke_skirt import FORM_A, VENT, WAISTBAND, ZIP, run, skirt_recipe, with_steps, yoke_recipe


@cache
def straight() -> dict[str, CutPiece]:
    """A straight skirt with vent, zip and waistband, by the titles of its pieces."""
    recipe = with_steps(skirt_recipe(), VENT, ZIP, WAISTBAND)
    return {piece.title: piece for piece in finish(run(recipe).pattern, production_table())}


@cache
def uneven() -> dict[str, CutPiece]:
    """A skirt for an invented body with one higher hip."""
    body = read_measures(ROOT / "examples" / "measures" / "ines_k.json")
    return {piece.title: piece for piece in finish(run(skirt_recipe(body), body).pattern, production_table())}


@cache
def yoked() -> dict[str, CutPiece]:
    return {piece.title: piece for piece in finish(run(yoke_recipe(), FORM_A).pattern, production_table())}


def texts(piece: CutPiece) -> dict[str, Text]:
    pen = ListPen()
    draw_piece(pen, piece, INFO)
    return {text.words: text for text in pen.texts}


def test_the_back_says_where_zip_and_vent_stop() -> None:
    back = straight()["Back"]
    said = texts(back)
    assert {"center back", "zip ends here", "vent begins here", "fold line", "hip line"} <= set(said)
    for words, purpose in (("zip ends here", "zip stop"), ("vent begins here", "top of vent")):
        (notch,) = [notch for notch in back.notches if notch.purpose == purpose]
        assert (
            text_box(said[words]).distance(shapely.Point(notch.sew_position.x, notch.sew_position.y)) < 10.0
        )


def test_the_band_says_which_end_is_the_underlap() -> None:
    band = straight()["Waistband"]
    said = texts(band)
    # Face up, the wearer's right lies on the left as the wearer looks down on the band.
    places = [text_box(said[words]).centroid.x for words in ("right side seam", "center", "left side seam")]
    assert places == sorted(places)
    underlap = text_box(said["underlap begins here"]).centroid.x
    assert places[-1] < underlap < band.bounds.max_x


def test_a_center_that_has_its_line_is_named_once() -> None:
    assert [words for words in texts(straight()["Front"]) if "center" in words] == ["center front"]
    assert [words for words in texts(yoked()["Front yoke"]) if "center" in words] == ["center front"]


def test_an_uneven_front_says_which_side_is_the_wearers_right() -> None:
    said = texts(uneven()["Front"])
    # Face up, the wearer's right half of a front lies on the left of the picture.
    assert text_box(said["wearer’s right"]).centroid.x < 0.0 < text_box(said["wearer’s left"]).centroid.x
    assert not [edge for edge in named_edges(straight()["Front"]) if "wearer" in edge.words]
    assert not [edge for edge in named_edges(uneven()["Left back"]) if "wearer" in edge.words]


PIECES = [*straight().values(), *uneven().values(), *yoked().values(), *skirt_pieces()]


@pytest.mark.parametrize("piece", PIECES, ids=lambda piece: str(piece.title))
def test_no_words_stand_on_a_line_or_on_each_other(piece: CutPiece) -> None:
    pen = ListPen()
    draw_piece(pen, piece, INFO)
    lines = [shapely.LineString([(p.x, p.y) for p in path.flattened(0.05)]) for path, _ in pen.strokes]
    boxes = [text_box(text) for text in pen.texts]
    inside = polygon(piece.cut_line)
    for index, box in enumerate(boxes):
        assert inside.contains(box), pen.texts[index].words
        assert not any(line.intersects(box) for line in lines), pen.texts[index].words
        assert not any(box.intersects(other) for other in boxes[index + 1 :]), pen.texts[index].words


@pytest.mark.parametrize("piece", PIECES, ids=lambda piece: str(piece.title))
def test_words_read_from_the_left_or_upward(piece: CutPiece) -> None:
    """With the grain up, as the piece lies before her."""
    for text in texts(piece).values():
        on_sheet = (text.degrees + 90.0 - piece.grain.degrees + 180.0) % 360.0 - 180.0
        assert -90.0 < on_sheet <= 90.0 + 1e-6, text.words


@pytest.mark.parametrize(
    ("degrees", "grain", "wanted"),
    [(270.0, 90.0, 90.0), (-90.0, 90.0, 90.0), (180.0, 90.0, 0.0), (30.0, 90.0, 30.0), (90.0, 0.0, 270.0)],
)
def test_readable(degrees: float, grain: float, wanted: float) -> None:
    assert readable(degrees, grain) == pytest.approx(wanted)


def test_a_piece_without_room_goes_without_words() -> None:
    tiny = cut_one(polygon_piece([(0, 0), (30, 0), (30, 30), (0, 30)]))
    assert texts(tiny)


def test_words_of_lines_and_edges_without_allowance() -> None:
    assert line_words("skirt.front/hip_line@right") == "hip line"
    assert line_words("skirt.front/center_front/above") == "center front"
    said = allowance_words(yoked()["Back facing"], INFO)
    assert said.endswith("no allowance where it is neatened")


def test_a_level_that_a_dart_cuts_is_named_once_on_its_longest_part() -> None:
    front = next(piece for piece in finish(pictured("bodice"), production_table()) if piece.title == "Front")
    parts = {line.name: line.path.length for line in front.lines if "/bust_line" in line.name}
    assert len(parts) > 1, "the bust dart opens in it"
    named = {name: words for name, words in named_lines(front).items() if words == "bust line"}
    assert named == {max(parts, key=lambda name: parts[name]): "bust line"}
    assert sum(text.words == "bust line" for text in pen_of(front).texts) == 1


@cache
def pictured(block: str) -> Pattern:
    """The block of the invented body of the pictures."""
    drafted = pictured_block(block)
    assert drafted is not None
    return drafted


def pen_of(piece: CutPiece) -> ListPen:
    pen = ListPen()
    draw_piece(pen, piece, INFO)
    return pen


def test_a_sleeve_says_its_front_its_back_and_where_the_shoulder_meets_it() -> None:
    drafted = pictured_block("sleeve")
    assert drafted is not None
    sleeve = next(piece for piece in finish(drafted, production_table()) if piece.title == "Sleeve")
    named = {edge.words: edge.path for edge in named_edges(sleeve)}
    assert set(named) == {"front", "back"}
    # The right sleeve lies face up: its front toward +x.
    assert named["front"].bounds().center.x > named["back"].bounds().center.x
    said = [notch_words(sleeve, notch) for notch in sleeve.notches]
    assert said.count("shoulder seam") == 1


def test_where_a_zip_goes_on_over_the_waist_its_end_is_written_below_only() -> None:
    """The bodice of the dress is open from neck to waist, and the zip goes on into the skirt."""
    recipe = next(style.recipe for style in rack() if style.stem == "princess_dress")
    dress = replay(recipe, dict(lower_bodies())["medium-92"]).pattern
    pieces = {piece.title: piece for piece in finish(dress, production_table())}
    stops = {
        title: [notch_words(piece, notch) for notch in piece.notches if notch.purpose == "zip stop"]
        for title, piece in pieces.items()
    }
    assert stops["Bodice center back"] == [""]
    assert stops["Skirt back"] == ["zip ends here"]
