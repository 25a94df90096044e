"""The cutter's must: made from the pieces, compared with them, and readable."""

import io
from collections import Counter
from dataclasses import replace
from typing import Any

import pikepdf
import pypdfium2
import pytest

from notchbook.errors import InputError, OutputError
from notchbook.finish import CutPiece, Quantity
from notchbook.output import PaperInfo
from notchbook.output import card_pdf as writer
from notchbook.output.card import WHOLE_FUSIBLE, CardRow, CutterCard, card_of
from notchbook.output.card_check import compare_card
from notchbook.output.card_draft import draft_pages
from notchbook.output.card_pdf import CardPaper, card_pdf
from notchbook.output.paper_info import DraftedFrom, PaperEase, PaperTrim
from support.papers import INFO, skirt_pieces


def pieces() -> tuple[CutPiece, ...]:
    """The skirt, its front cut in fusible too."""
    front, back = skirt_pieces()
    fused = replace(front, quantities=(*front.quantities, Quantity("fusible", "cut 1, whole", 1)))
    return fused, back


def words_of(data: bytes) -> str:
    document = pypdfium2.PdfDocument(data)
    said = "\n".join(page.get_textpage().get_text_range() for page in document)
    document.close()
    return said


def test_pieces_and_panels_are_counted_apart() -> None:
    card = card_of(pieces(), INFO)
    assert [group.material for group in card.groups] == ["self", "fusible"]
    assert card.piece_count == 2
    # A whole front and a pair of backs are three panels of cloth; one more of fusible.
    assert [group.panels for group in card.groups] == [3, 1]
    assert card.panels == 4
    assert [row.quantity for row in card.groups[0].rows] == ["cut 1, whole", "cut 1 pair"]


def test_fusible_says_how_it_is_cut() -> None:
    card = card_of(pieces(), INFO)
    assert [row.remark for row in card.groups[1].rows] == [WHOLE_FUSIBLE]
    assert "drill\N{NO-BREAK SPACE}hole" in card.groups[0].rows[0].remark


def test_the_card_agrees_with_its_pieces() -> None:
    assert compare_card(card_of(pieces(), INFO), pieces()) == ()


def changed(card: CutterCard, change: dict[str, Any]) -> CutterCard:
    first = card.groups[0]
    row = replace(first.rows[1], **change)
    return replace(card, groups=(replace(first, rows=(first.rows[0], row)), *card.groups[1:]))


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"quantity": "cut 2 pairs"}, "card-quantity-differs"),
        ({"panels": 4}, "card-quantity-differs"),
        ({"title": "Back skirt"}, "card-name-differs"),
        ({"number": 7}, "card-name-differs"),
        ({"piece": "skirt.side"}, "card-piece-extra"),
        ({"piece": "skirt.front"}, "card-piece-twice"),
    ],
)
def test_a_planted_disagreement_is_found(change: dict[str, Any], code: str) -> None:
    found = compare_card(changed(card_of(pieces(), INFO), change), pieces())
    assert code in [finding.code for finding in found]
    assert all(finding.severity.value == "stop" and finding.message for finding in found)


def test_missing_pieces_and_wrong_totals_are_found() -> None:
    card = card_of(pieces(), INFO)
    short = replace(card, groups=card.groups[:1])
    codes = [finding.code for finding in compare_card(short, pieces())]
    assert codes == ["card-piece-missing", "card-total-differs"]
    assert [f.code for f in compare_card(replace(card, piece_count=3), pieces())] == ["card-total-differs"]


def test_a_card_that_disagrees_is_not_written(monkeypatch: pytest.MonkeyPatch) -> None:
    wrong = changed(card_of(pieces(), INFO), {"quantity": "cut 9"})
    monkeypatch.setattr(writer, "card_of", lambda *_: wrong)
    with pytest.raises(OutputError) as refused:
        card_pdf(pieces(), INFO)
    assert refused.value.code == "card-disagrees"
    assert "cut 9" in str(refused.value)


def test_what_a_stranger_needs_stands_on_it() -> None:
    said = words_of(card_pdf(pieces(), INFO)[0])
    for words in (
        "S-104 Straight skirt",
        "12 March 2031",
        "Skirt front",
        "Skirt back",
        "cut 1 pair",
        "self, wool crepe, 150 cm",
        "2 pieces, 3 panels",
        "invisible zip 20 cm, 1",
        "agrees with the pieces: 2 of 2, 4 panels to cut",
        "Rotary cutter",
        "local rules",
    ):
        assert words in said


def test_many_pieces_go_on_over_pages_and_none_is_lost() -> None:
    front = skirt_pieces()[0]
    many = tuple(
        replace(front, name=f"skirt.part{n}", title=f"Part {n} with a rather long name", number=n, of=40)
        for n in range(1, 41)
    )
    data, card = card_pdf(many, INFO)
    pdf = pikepdf.open(io.BytesIO(data))
    assert len(pdf.pages) > 1
    said = words_of(data)
    numbers = Counter(n for n in range(1, 41) if f"Part {n} with" in said.replace("\r\n", " "))
    assert len(numbers) == 40
    assert "self, wool crepe, 150 cm, continued" in said
    assert f"page 1 of {len(pdf.pages)}" in said
    assert card.panels == 40


def test_names_that_are_too_long_stay_in_their_column() -> None:
    front, back = skirt_pieces()
    long = replace(back, title="Back " + "with a very long name " * 8)
    info = replace(INFO, title="Skirt " + "of many words " * 12, revision="AB")
    data, _ = card_pdf((front, long), info)
    document = pypdfium2.PdfDocument(data)
    page = document[0]
    width, _ = page.get_size()
    text = page.get_textpage()
    for index in range(text.count_chars()):
        left, _, right, _ = text.get_charbox(index)
        assert left >= 0.0
        assert right <= width
    document.close()


@pytest.mark.parametrize(("paper", "size"), [("a4", (210.0, 297.0)), ("letter", (215.9, 279.4))])
def test_papers(paper: CardPaper, size: tuple[float, float]) -> None:
    data, _ = card_pdf(pieces(), INFO, paper)
    pdf = pikepdf.open(io.BytesIO(data))
    box = [float(value) * 25.4 / 72.0 for value in pdf.pages[0].obj.MediaBox]
    assert box[2:] == pytest.approx(list(size), abs=0.001)


def test_refusals_and_bare_information() -> None:
    with pytest.raises(InputError) as refused:
        card_pdf(pieces(), INFO, "a3")  # type: ignore[arg-type]  # a wrong word on purpose
    assert refused.value.code == "paper-unknown"
    with pytest.raises(OutputError):
        card_pdf((), INFO)
    said = words_of(card_pdf(skirt_pieces(), PaperInfo("", "Sloper"))[0])
    assert "Sloper" in said
    assert "rev." not in said
    assert isinstance(card_of(pieces(), INFO).groups[0].rows[0], CardRow)


def test_the_card_is_the_same_bytes_each_time() -> None:
    assert card_pdf(pieces(), INFO)[0] == card_pdf(pieces(), INFO)[0]


DRAFTED = DraftedFrom(
    measures=tuple((f"measure {index}", f"{index}.0 cm") for index in range(1, 8)),
    settings=("Bodice: bust dart side, length waist", "Sleeve: fabric shirting"),
    eases=tuple(
        PaperEase(f"line {index}", "92.0 cm", "6.0 cm", "98.0 cm", "97.5 cm", "5.0 cm to 10.2 cm")
        for index in range(1, 4)
    ),
)


@pytest.mark.parametrize("times", [1, 6])
def test_where_a_trim_goes_is_told_whole(times: int) -> None:
    remark = "; ".join(f"in the center back of the part {index}" for index in range(times))
    trims = (PaperTrim("1 zip, 57.0 cm long", remark), PaperTrim("1 hook and eye", "on the band"))
    data, _ = card_pdf(pieces(), replace(INFO, trims=trims))
    said = " ".join(words_of(data).split())
    assert remark in said
    assert "on the band" in said


def test_what_it_was_drafted_from_stands_on_a_page_of_its_own() -> None:
    plain, _ = card_pdf(pieces(), INFO)
    data, _ = card_pdf(pieces(), replace(INFO, drafted_from=DRAFTED))
    said = words_of(data)
    for words in (
        "measure 7",
        "7.0 cm",
        *DRAFTED.settings,
        "line 3",
        "97.5 cm",
        "5.0 cm to 10.2 cm",
        "page 2 of 2",
    ):
        assert words in said, words
        assert words not in words_of(plain), words


def test_what_changed_a_girth_stands_below_it() -> None:
    row = replace(DRAFTED.eases[0], remark="drafted with 6.0 cm of ease, changed by Pleats")
    data, _ = card_pdf(pieces(), replace(INFO, drafted_from=replace(DRAFTED, eases=(row,))))
    assert "changed by Pleats" in words_of(data)
    assert "changed by" not in words_of(card_pdf(pieces(), replace(INFO, drafted_from=DRAFTED))[0])


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_long_draft_goes_on_and_loses_no_line(paper: CardPaper) -> None:
    many = replace(
        DRAFTED, eases=tuple(replace(DRAFTED.eases[0], name=f"line <{index}>") for index in range(130))
    )
    data, _ = card_pdf(pieces(), replace(INFO, drafted_from=many), paper)
    said = words_of(data)
    assert all(f"line <{index}>" in said for index in range(130))
    document = pypdfium2.PdfDocument(data)
    for page in document:
        text = page.get_textpage()
        boxes = [text.get_charbox(index) for index in range(text.count_chars())]
        assert min(box[1] for box in boxes) > 0.0
    document.close()


def test_the_sewing_order_stands_on_the_last_pages_with_its_numbers_and_goes_on_below() -> None:
    long = " ".join(["Sew the front to the back with a sentence that does not end"] * 4)
    data, _ = card_pdf(pieces(), replace(INFO, sewing=("Sew the darts.", long)))
    said = words_of(data)
    for words in ("Sewing order", "Sew the darts.", "page 2 of 2"):
        assert words in said, words
    assert said.count("a sentence that does not end") + said.count("that does not end") >= 4


@pytest.mark.parametrize("before", range(36, 56))
def test_a_heading_stands_with_the_heads_and_the_first_line_of_its_table(before: int) -> None:
    """However many lines stand before it: never alone at the foot of a page."""
    told = replace(DRAFTED, measures=(), settings=())
    info = replace(INFO, drafted_from=told, sewing=tuple(f"Line {number}." for number in range(before)))
    pages = draft_pages(info, 182.0, 247.0)
    for rows in pages:
        assert not rows[-1].is_heading
        assert rows[-1].words[-1] != "usual ease"


def test_a_table_that_goes_on_has_the_heads_of_its_columns_again_and_parts_no_remark_from_its_line() -> None:
    row = replace(DRAFTED.eases[0], remark="drafted with 6.0 cm of ease, changed by Pleats")
    info = replace(INFO, drafted_from=replace(DRAFTED, eases=(row,) * 90))
    pages = draft_pages(info, 182.0, 247.0)
    assert len(pages) > 2
    for rows in pages[1:]:
        assert rows[0].words[-1] == "usual ease"
        assert rows[-1].words == ("drafted with 6.0 cm of ease, changed by Pleats",)


@pytest.mark.parametrize("before", range(36, 56))
def test_no_row_of_measures_stands_alone_on_the_next_page(before: int) -> None:
    told = replace(DRAFTED, settings=(), eases=())
    info = replace(INFO, drafted_from=told, sewing=tuple(f"Line {number}." for number in range(before)))
    for rows in draft_pages(info, 182.0, 247.0):
        assert sum(len(row.words) == 4 for row in rows) != 1
