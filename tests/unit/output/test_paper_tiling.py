"""Sheets and tiles: counts, names, blanks, and pieces that keep clear of each other."""

import io
from dataclasses import replace

import pikepdf
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from notchbook.errors import InputError, OutputError
from notchbook.finish import CutPiece
from notchbook.geometry import Box, Path, Point
from notchbook.output.layout import GAP, MARGIN, Sheet, lay_out
from notchbook.output.pdf_sheet import LONGEST_PAGE, sheet_pdf
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.output.tiling import FORMATS, OVERLAP, PaperFormat, best_tiling, row_letters, tile_count, tiled
from support.cut_shapes import cut_one, polygon, polygon_piece, square
from support.papers import INFO, skirt_pieces


def test_an_a0_sheet_takes_25_sheets_of_a4() -> None:
    # n = ceil((W - o) / (w - o)); A0 is 841 x 1189 (ISO 216); A4 printable 190 x 277, overlap 10.
    a4 = FORMATS["a4"]
    columns, rows = tile_count(841.0, a4.frame_width), tile_count(1189.0, a4.frame_height)
    assert (a4.frame_width, a4.frame_height, OVERLAP) == (190.0, 277.0, 10.0)
    assert (columns, rows, columns * rows) == (5, 5, 25)
    tiling = tiled(Sheet((), 841.0, 1189.0), a4)
    assert len(tiling.tiles) == 25
    assert not tiling.printed


@given(st.floats(1.0, 20_000.0), st.sampled_from(list(FORMATS.values())))
def test_tiles_cover_and_do_not_waste(extent: float, paper: PaperFormat) -> None:
    frame = paper.frame_width
    count = tile_count(extent, frame)
    assert count * (frame - OVERLAP) + OVERLAP >= extent - 1e-6
    assert count == 1 or (count - 1) * (frame - OVERLAP) + OVERLAP < extent


@pytest.mark.parametrize(("row", "letters"), [(0, "A"), (25, "Z"), (26, "AA"), (51, "AZ"), (52, "BA")])
def test_rows_have_letters(row: int, letters: str) -> None:
    assert row_letters(row) == letters


def test_blank_tiles_are_skipped_but_keep_their_names() -> None:
    tower = cut_one(polygon_piece([(0, 0), (100, 0), (100, 900), (0, 900)]))
    wide = cut_one(polygon_piece([(0, 0), (600, 0), (600, 100), (0, 100)]))
    tiling = best_tiling((tower, wide), FORMATS["both"])
    names = [tile.name for tile in tiling.tiles]
    assert names == [f"{row_letters(r)}{c + 1}" for r in range(tiling.rows) for c in range(tiling.columns)]
    assert 0 < len(tiling.printed) < len(tiling.tiles)
    ground = shapely.union_all(
        [polygon(p.piece.cut_line.transformed(p.motion)) for p in tiling.sheet.placements]
    )
    printed = shapely.union_all(
        [shapely.box(t.frame.min_x, t.frame.min_y, t.frame.max_x, t.frame.max_y) for t in tiling.printed]
    )
    assert printed.buffer(0.01).covers(ground)


rectangles = st.lists(st.tuples(st.floats(20, 900), st.floats(20, 900)), min_size=1, max_size=9)


def cut_rectangles(sizes: list[tuple[float, float]]) -> tuple[CutPiece, ...]:
    """Pieces of these sizes; all but the cut line is that of one square."""
    plain = cut_one(square())
    corners = [(Point(0, 0), Point(w, 0), Point(w, h), Point(0, h)) for w, h in sizes]
    return tuple(replace(plain, cut_line=Path.polyline(four, closed=True)) for four in corners)


@given(rectangles, st.one_of(st.none(), st.floats(200.0, 2000.0)))
def test_pieces_keep_their_distance(sizes: list[tuple[float, float]], width: float | None) -> None:
    pieces = cut_rectangles(sizes)
    sheet = lay_out(pieces, width=width)
    boxes = [shapely.box(p.box.min_x, p.box.min_y, p.box.max_x, p.box.max_y) for p in sheet.placements]
    for index, one in enumerate(boxes):
        for other in boxes[index + 1 :]:
            assert one.distance(other) >= GAP - 1e-6
    whole = shapely.box(MARGIN, MARGIN, sheet.width - MARGIN, sheet.height - MARGIN).buffer(1e-6)
    assert all(whole.covers(box) for box in boxes)
    widest = max(box.bounds[2] - box.bounds[0] for box in boxes)
    assert width is None or sheet.width <= max(width, widest + 2 * MARGIN) + 1e-6


def test_grain_stands_up_and_nothing_is_reflected() -> None:
    lying = cut_one(polygon_piece([(0, 0), (300, 0), (300, 60), (0, 60)], grain=0.0))
    sheet = lay_out((*skirt_pieces(), lying))
    for placement in sheet.placements:
        way = placement.motion.apply(placement.piece.grain.end) - placement.motion.apply(
            placement.piece.grain.start
        )
        assert way.direction() == pytest.approx(90.0)
        assert not placement.motion.is_reflection
    assert isinstance(sheet.placements[0].box, Box)


def test_no_pieces_and_unknown_paper_are_refused() -> None:
    assert lay_out(()) == Sheet((), 0.0, 0.0)
    with pytest.raises(OutputError) as refused:
        tiled_pdf((), INFO)
    assert refused.value.code == "output-no-pieces"
    with pytest.raises(OutputError):
        sheet_pdf((), INFO)
    with pytest.raises(InputError) as unknown:
        tiled_pdf(skirt_pieces(), INFO, "a3")  # type: ignore[arg-type]  # a wrong word on purpose
    assert unknown.value.code == "paper-unknown"
    assert str(unknown.value)


def test_absurd_sizes_are_refused() -> None:
    huge = cut_one(polygon_piece([(0, 0), (9000, 0), (9000, 9000), (0, 9000)]))
    with pytest.raises(OutputError) as tiles:
        tiled_pdf((huge,), INFO)
    assert tiles.value.code == "output-too-many-tiles"
    with pytest.raises(OutputError) as wide:
        sheet_pdf(skirt_pieces(), INFO, width=400.0)
    assert wide.value.code == "output-too-wide"


def test_a_long_sheet_is_split_below_the_limit_of_pdf() -> None:
    long = cut_one(polygon_piece([(0, 0), (400, 0), (400, 7000), (0, 7000)]))
    data, sheet = sheet_pdf((long,), INFO, width=900.0)
    pdf = pikepdf.open(io.BytesIO(data))
    heights = [float(page.obj.MediaBox[3]) * 25.4 / 72.0 for page in pdf.pages]
    # PDF pages end at 14 400 units = 5080 mm (ISO 32000-1, annex C).
    assert len(heights) == 2
    assert max(heights) <= LONGEST_PAGE + 1e-3
    assert sum(heights) > sheet.height
