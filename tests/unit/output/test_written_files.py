"""Files are written whole or not at all."""

import errno
import io
import os
from pathlib import Path as FilePath

import pytest
from PIL import Image

from notchbook.errors import OutputError
from notchbook.output import write_file
from notchbook.output.card_pdf import card_pdf, write_card_pdf
from notchbook.output.pdf_sheet import write_sheet_pdf
from notchbook.output.pdf_tiles import write_tiled_pdf
from notchbook.output.png import rendered, write_png
from notchbook.output.svg import write_svg
from support.papers import INFO, skirt_pieces


def names_in(folder: FilePath) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_file_is_replaced_in_one_stroke(tmp_path: FilePath) -> None:
    target = tmp_path / "paper.pdf"
    assert write_file(target, b"one") == target
    target.chmod(0o640)
    write_file(str(target), b"two")
    assert target.read_bytes() == b"two"
    assert target.stat().st_mode & 0o777 == 0o640
    assert names_in(tmp_path) == ["paper.pdf"]


@pytest.mark.parametrize(
    ("number", "code"),
    [
        (errno.ENOSPC, "output-disk-full"),
        (errno.EDQUOT, "output-disk-full"),
        (errno.EACCES, "output-forbidden"),
        (errno.EROFS, "output-forbidden"),
        (errno.EIO, "output-failed"),
    ],
)
def test_a_failure_leaves_the_old_file_and_nothing_else(
    tmp_path: FilePath, monkeypatch: pytest.MonkeyPatch, number: int, code: str
) -> None:
    target = tmp_path / "paper.pdf"
    target.write_bytes(b"old")

    def failing(_: int) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "fsync", failing)
    with pytest.raises(OutputError) as refused:
        write_file(target, b"new")
    assert refused.value.code == code
    assert str(target) in str(refused.value)
    assert target.read_bytes() == b"old"
    assert names_in(tmp_path) == ["paper.pdf"]


def test_a_break_in_the_middle_leaves_nothing(tmp_path: FilePath, monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stopped)
    with pytest.raises(KeyboardInterrupt):
        write_file(tmp_path / "paper.pdf", b"new")
    assert names_in(tmp_path) == []


def test_folders_in_the_way_and_missing_folders(tmp_path: FilePath) -> None:
    with pytest.raises(OutputError) as refused:
        write_file(tmp_path, b"x")
    assert refused.value.code == "output-is-folder"
    with pytest.raises(OutputError) as missing:
        write_file(tmp_path / "none" / "paper.pdf", b"x")
    assert missing.value.code == "output-folder-missing"


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may write everywhere")
def test_a_folder_that_may_not_be_written(tmp_path: FilePath) -> None:
    folder = tmp_path / "locked"
    folder.mkdir()
    folder.chmod(0o500)
    with pytest.raises(OutputError) as refused:
        write_file(folder / "paper.pdf", b"x")
    assert refused.value.code == "output-forbidden"


def test_every_writer_writes_its_format(tmp_path: FilePath) -> None:
    pieces = skirt_pieces()
    write_tiled_pdf(pieces, INFO, tmp_path / "tiles.pdf")
    write_sheet_pdf(pieces, INFO, tmp_path / "sheet.pdf")
    write_card_pdf(pieces, INFO, tmp_path / "card.pdf")
    write_svg(pieces, INFO, tmp_path / "pieces.svg")
    write_png(pieces, INFO, tmp_path / "pieces.png", 40.0)
    starts = {path.name: path.read_bytes()[:5] for path in tmp_path.iterdir()}
    assert starts == {
        "tiles.pdf": b"%PDF-",
        "sheet.pdf": b"%PDF-",
        "card.pdf": b"%PDF-",
        "pieces.svg": b"<?xml",
        "pieces.png": b"\x89PNG\r",
    }


def test_a_picture_that_is_too_large_is_refused(tmp_path: FilePath) -> None:
    with pytest.raises(OutputError) as refused:
        write_png(skirt_pieces(), INFO, tmp_path / "pieces.png", 2000.0)
    assert refused.value.code == "picture-too-large"
    assert names_in(tmp_path) == []


def test_a_picture_has_the_size_of_its_page(tmp_path: FilePath) -> None:
    picture = Image.open(io.BytesIO(rendered(card_pdf(skirt_pieces(), INFO)[0], 0, 72.0)))
    # A4 is 595 x 842 points (210 x 297 mm).
    assert picture.size in ((595, 842), (596, 842))
    assert picture.convert("L").getextrema() == (0, 255)
