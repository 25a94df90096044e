"""The SVG, measured again by a library that knows nothing of us."""

import io
import math
import xml.etree.ElementTree as ElementTree
from dataclasses import replace

import pytest
import svgpathtools

from notchbook.errors import OutputError
from notchbook.output.layout import lay_out
from notchbook.output.svg import svg_of
from support.papers import INFO, skirt_pieces

NAMESPACE = "{http://www.w3.org/2000/svg}"


def paths_by_id() -> dict[str, svgpathtools.Path]:
    paths, attributes = svgpathtools.svg2paths(io.StringIO(svg_of(skirt_pieces(), INFO)))
    return {given["id"]: path for path, given in zip(paths, attributes, strict=True) if "id" in given}


def test_every_sew_line_has_its_name_and_its_length() -> None:
    found = paths_by_id()
    for piece in skirt_pieces():
        for edge in piece.edges:
            if edge.width > 0.0:
                assert found[edge.name].length(error=1e-6) == pytest.approx(edge.sew.length, abs=0.01)


def test_cut_lines_enclose_the_same_area() -> None:
    found = paths_by_id()
    for piece in skirt_pieces():
        path = found[f"{piece.name}/cut_line"]
        assert path.isclosed()
        # y runs down in SVG: counter-clockwise becomes clockwise, and the sign of the area changes.
        assert abs(path.area()) == pytest.approx(piece.cut_line.area(), abs=0.5)


def test_lines_are_exact_lines_and_cubics_not_dozens_of_points() -> None:
    found = paths_by_id()
    side = found["skirt.back/side_seam"]
    assert [type(part).__name__ for part in side] == ["Line", "CubicBezier"]


def test_one_unit_is_one_millimeter() -> None:
    root = ElementTree.fromstring(svg_of(skirt_pieces(), INFO))
    sheet = lay_out(skirt_pieces())
    width, height = root.attrib["width"], root.attrib["height"]
    assert width.endswith("mm")
    assert [float(part) for part in root.attrib["viewBox"].split()] == pytest.approx(
        [0.0, 0.0, sheet.width, sheet.height], abs=1e-3
    )
    assert float(width[:-2]) == pytest.approx(sheet.width, abs=1e-3)
    assert float(height[:-2]) == pytest.approx(sheet.height, abs=1e-3)


def test_groups_are_the_pieces_and_everything_lies_on_the_sheet() -> None:
    root = ElementTree.fromstring(svg_of(skirt_pieces(), INFO))
    groups = [group.attrib["id"] for group in root.iter(f"{NAMESPACE}g")]
    assert sorted(groups) == ["skirt.back", "skirt.front"]
    sheet = lay_out(skirt_pieces())
    for path in paths_by_id().values():
        left, right, top, bottom = path.bbox()
        assert left >= 0.0
        assert top >= 0.0
        assert right <= sheet.width
        assert bottom <= sheet.height


def test_ids_stand_once_and_text_is_escaped() -> None:
    wild = replace(INFO, title='Skirt <"&> Ж', maker="A & B")
    root = ElementTree.fromstring(svg_of(skirt_pieces(), wild))
    ids = [item.attrib["id"] for item in root.iter() if "id" in item.attrib]
    assert len(ids) == len(set(ids))
    assert 'S-104 Skirt <"&> Ж' in "".join(root.itertext())


def test_label_words_run_along_the_grain() -> None:
    root = ElementTree.fromstring(svg_of(skirt_pieces(), INFO))
    title = next(text for text in root.iter(f"{NAMESPACE}text") if text.text and "Skirt back" in text.text)
    # 90 degrees counter-clockwise with y up is -90 in SVG.
    assert title.attrib["transform"].startswith("rotate(-90 ")
    assert math.isclose(float(title.attrib["font-size"]), 26.0 * 25.4 / 72.0, rel_tol=0.5)


def test_nothing_to_draw_is_refused() -> None:
    with pytest.raises(OutputError) as refused:
        svg_of((), INFO)
    assert refused.value.code == "output-no-pieces"
