"""Tiled prints, read back from the file by other means than they were written with."""

import io
import math

import pikepdf
import pypdfium2
import pytest
import shapely

from notchbook.finish import CutPiece
from notchbook.output.layout import Placement
from notchbook.output.pdf_sheet import sheet_pdf
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.output.tiling import FORMATS, Paper, Tiling
from support.papers import INFO, skirt_pieces
from support.printed import Stroke, page_size, strokes_of

SEW_DASH = (4.0, 2.0)
"""mm; how sew lines are told from all others in the print."""


def opened(paper: Paper = "both") -> tuple[pikepdf.Pdf, Tiling]:
    data, tiling = tiled_pdf(skirt_pieces(), INFO, paper)
    return pikepdf.open(io.BytesIO(data)), tiling


def is_sew_line(stroke: Stroke) -> bool:
    return len(stroke.dash) == 2 and all(
        abs(found - wanted) < 1e-3 for found, wanted in zip(stroke.dash, SEW_DASH, strict=True)
    )


def squares(page: pikepdf.Page) -> list[tuple[float, float]]:
    """Width and height of every closed rectangle of the page, mm."""
    found = []
    for stroke in strokes_of(page):
        left, low, right, high = stroke.bounds
        if len(stroke.pieces) >= 4 and abs((right - left) - (high - low)) < 0.5:
            found.append((right - left, high - low))
    return found


@pytest.mark.parametrize("paper", ["a4", "letter", "both"])
def test_test_squares_measure_10_cm_and_4_in(paper: Paper) -> None:
    pdf, _ = opened(paper)
    sides = squares(pdf.pages[0])
    # 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
    for wanted in (100.0, 4 * 25.4):
        assert [s for s in sides if list(s) == pytest.approx([wanted, wanted], abs=0.005)]


@pytest.mark.parametrize("paper", ["a4", "letter", "both"])
def test_the_first_sheet_tells_a_stranger_what_to_do(paper: Paper) -> None:
    document = pypdfium2.PdfDocument(tiled_pdf(skirt_pieces(), INFO, paper)[0])
    said = " ".join(document[0].get_textpage().get_text_range().split())
    document.close()
    for words in (
        "Print at 100 %",
        "rev. C",
        "dart, stitch",
        "level center grain notch notch of the back",
        "Page map",
        "measure both squares",
        "/64 in off",
    ):
        assert words in said


@pytest.mark.parametrize("paper", ["a4", "letter", "both"])
def test_pages_ask_for_full_size_one_sided_printing(paper: Paper) -> None:
    pdf, tiling = opened(paper)
    wish = pdf.Root.ViewerPreferences
    assert (str(wish.PrintScaling), str(wish.Duplex)) == ("/None", "/Simplex")
    assert len(pdf.pages) == len(tiling.printed) + 1
    form = FORMATS[paper]
    for page in pdf.pages:
        assert page_size(page) == pytest.approx((0.0, 0.0, form.page_width, form.page_height), abs=0.001)
        assert page_size(page, "/CropBox") == pytest.approx(page_size(page))
        left, low, right, high = page_size(page, "/TrimBox")
        assert (right - left, high - low) == pytest.approx((form.frame_width, form.frame_height), abs=0.001)
        assert min(left, low, form.page_width - right, form.page_height - high) >= 10.0 - 0.001
        assert "/UserUnit" not in page.obj
        assert int(page.obj.get("/Rotate", 0)) == 0


def test_frame_fits_a4_and_letter() -> None:
    # A4 210 x 297 (ISO 216), Letter 215.9 x 279.4 (8 1/2 x 11 in); 10 mm clear of the edge on each.
    form = FORMATS["both"]
    assert (form.frame_width, form.frame_height) == (190.0, 254.0)
    assert form.page_width <= min(210.0, 215.9)
    assert form.page_height <= min(297.0, 279.4)


def model_lines(placement: Placement) -> list[shapely.LineString]:
    """The sew lines of a piece where they lie on the sheet, straight from the model."""
    return [
        shapely.LineString([(p.x, p.y) for p in edge.sew.transformed(placement.motion).flattened(0.002)])
        for edge in placement.piece.edges
        if edge.width > 0.0
    ]


def taped(pdf: pikepdf.Pdf, tiling: Tiling, slip: dict[str, float]) -> dict[str, list[tuple[float, float]]]:
    """Points of all sew lines on each tile, carried to the sheet as if the tiles were taped together.

    ``slip`` moves single tiles aside by so many mm, as careless taping would.
    """
    side, below = tiling.paper.margins
    found = {}
    for tile, page in zip(tiling.printed, list(pdf.pages)[1:], strict=True):
        dx = tile.frame.min_x - side + slip.get(tile.name, 0.0)
        dy = tile.frame.min_y - below
        found[tile.name] = [
            (x + dx, y + dy)
            for stroke in strokes_of(page)
            if is_sew_line(stroke)
            for x, y in stroke.samples(1.0)
        ]
    return found


def worst_miss(points: dict[str, list[tuple[float, float]]], tiling: Tiling) -> float:
    """The largest distance of a printed point from the model, and of the model from what is printed."""
    lines = [line for placement in tiling.sheet.placements for line in model_lines(placement)]
    model = shapely.MultiLineString(lines)
    printed = [point for found in points.values() for point in found]
    worst = float(max(model.distance(shapely.points(printed))))
    places = shapely.MultiPoint(printed).geoms
    cloud = shapely.STRtree(list(places))
    for line in lines:
        for share in range(int(line.length / 5.0)):
            place = line.interpolate(share * 5.0)
            nearest = places[int(cloud.nearest(place))]
            # Printed points stand less than 2 mm apart: what is nearest is no farther than half of that.
            worst = max(worst, nearest.distance(place) - 1.01)
    return worst


@pytest.mark.parametrize("paper", ["a4", "letter", "both"])
def test_taped_tiles_give_the_sew_lines_of_the_model(paper: Paper) -> None:
    pdf, tiling = opened(paper)
    assert worst_miss(taped(pdf, tiling, {}), tiling) < 0.1


@pytest.mark.parametrize("name", ["A1", "B3"])
def test_a_tile_moved_by_1_mm_fails_the_same_test(name: str) -> None:
    pdf, tiling = opened()
    assert worst_miss(taped(pdf, tiling, {name: 1.0}), tiling) > 0.5


def test_a_tile_left_out_fails_the_same_test() -> None:
    pdf, tiling = opened()
    points = taped(pdf, tiling, {})
    points["A2"] = []
    assert worst_miss(points, tiling) > 5.0


def test_nothing_is_printed_beyond_the_frame() -> None:
    pdf, tiling = opened()
    side, below = tiling.paper.margins
    for page in list(pdf.pages)[1:]:
        for stroke in strokes_of(page):
            if is_sew_line(stroke):
                right, high = side + tiling.paper.frame_width, below + tiling.paper.frame_height
                assert stroke.clip == pytest.approx((side, below, right, high), abs=0.001)


def test_match_marks_of_neighbors_make_whole_diamonds() -> None:
    pdf, tiling = opened()
    pages = dict(zip([tile.name for tile in tiling.printed], list(pdf.pages)[1:], strict=True))
    frames = {tile.name: tile.frame for tile in tiling.printed}
    side, below = tiling.paper.margins

    def triangles(name: str) -> list[shapely.Polygon]:
        frame = frames[name]
        found = []
        for stroke in strokes_of(pages[name]):
            corners = {(round(x, 3), round(y, 3)) for piece in stroke.pieces for x, y in piece}
            if len(corners) == 3 and not stroke.dash and stroke.clip is None:
                moved = [(x + frame.min_x - side, y + frame.min_y - below) for x, y in corners]
                found.append(shapely.Polygon(moved))
        return found

    for first, second in (("A1", "A2"), ("B2", "B3"), ("A1", "B1"), ("B3", "C3")):
        shared = [
            (one, other)
            for one in triangles(first)
            for other in triangles(second)
            if one.distance(other) < 0.01 and one.intersection(other).length > 9.0
        ]
        assert len(shared) == 1
        diamond = shared[0][0].union(shared[0][1])
        assert diamond.area == pytest.approx(50.0, abs=0.1)


def test_same_pieces_give_the_same_bytes() -> None:
    assert tiled_pdf(skirt_pieces(), INFO)[0] == tiled_pdf(skirt_pieces(), INFO)[0]
    assert sheet_pdf(skirt_pieces(), INFO)[0] == sheet_pdf(skirt_pieces(), INFO)[0]


def test_metadata_names_style_and_maker() -> None:
    pdf, _ = opened()
    assert str(pdf.docinfo["/Title"]) == "S-104 Straight skirt"
    assert str(pdf.docinfo["/Author"]) == "I. Varga (invented)"


def lengths_on(pages: list[pikepdf.Page]) -> list[float]:
    """Lengths of all sew lines of the pages, mm, longest first."""
    found = []
    for page in pages:
        for stroke in strokes_of(page):
            if is_sew_line(stroke):
                points = list(stroke.samples(0.5))
                found.append(shapely.LineString(points).length)
    return sorted(found, reverse=True)


def longest_sew(pieces: tuple[CutPiece, ...]) -> list[float]:
    return sorted((edge.sew.length for cut in pieces for edge in cut.edges if edge.width), reverse=True)


def test_one_sheet_holds_every_sew_line_at_full_length() -> None:
    data, sheet = sheet_pdf(skirt_pieces(), INFO)
    pdf = pikepdf.open(io.BytesIO(data))
    assert len(pdf.pages) == 1
    assert lengths_on(list(pdf.pages)) == pytest.approx(longest_sew(skirt_pieces()), abs=0.01)
    left, low, right, high = page_size(pdf.pages[0])
    assert right - left >= sheet.width
    assert high - low >= sheet.height
    assert [s for s in squares(pdf.pages[0]) if math.isclose(s[0], 100.0, abs_tol=0.005)]
    assert [s for s in squares(pdf.pages[0]) if math.isclose(s[0], 101.6, abs_tol=0.005)]
