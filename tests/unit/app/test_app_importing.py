"""Importing into a book or into files, and exporting: whole or not at all. All lists are invented."""

import os
import signal
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from notchbook.app.charts.importing import import_into, import_to_files, preview_file, preview_text
from notchbook.app.exporting import export_bodies
from notchbook.app.studio import Studio
from notchbook.body import read_bodies, read_measures
from notchbook.body.charts import read_chart
from notchbook.body.importing import Answers, Preview
from notchbook.errors import BookError, InputError, NotchbookError, OutputError
from support.book_dump import book_hash
from support.command import contents

LIST = "Name,Bust (cm),Waist (cm)\nAnna,94,74\nBea Ü.,90,70\nbea ü,92,71\n"
BAD = "Name,Bust (cm),Waist (cm)\nAnna,94,74\nBea,9,70\n"


@pytest.fixture
def place(tmp_path: Path) -> Path:
    return tmp_path / "studio.notchbook"


@pytest.fixture
def studio(place: Path) -> Iterator[Studio]:
    opened = Studio.open(place)
    opened.first_time()
    yield opened
    opened.close()


def many(count: int) -> Preview:
    rows = "".join(f"Invented {place},{90 + place % 9},7{place % 9}\n" for place in range(count))
    return preview_text(f"Name,Bust (cm),Waist (cm)\n{rows}", "list")


def test_all_rows_go_in_under_the_next_numbers(studio: Studio) -> None:
    done: list[int] = []
    before = studio.list_bodies()
    last = int(before[-1].number.removeprefix("M-"))
    report = import_into(studio, preview_text(LIST, "spring"), progress=done.append)
    assert (report.stored, report.left, done) == (3, 0, [3])
    assert [entry.number for entry in report.entries] == [f"M-{last + place}" for place in (1, 2, 3)]
    assert studio.list_bodies() == (*before, *report.entries)
    assert [entry.name for entry in report.entries] == ["Anna", "Bea Ü.", "bea ü"]
    state = studio.open_body(report.entries[0].id)
    assert (state.measures.value("bust_girth"), state.version) == (940, 1)


def test_one_bad_row_stores_nothing_unless_she_says_so(studio: Studio, place: Path) -> None:
    before = book_hash(place)
    shown = preview_text(BAD)
    with pytest.raises(InputError) as refusal:
        import_into(studio, shown)
    assert refusal.value.code == "import-rows-refused"
    assert book_hash(place) == before
    report = import_into(studio, shown, only_good=True)
    assert (report.stored, report.left) == (1, 1)


def test_open_questions_store_nothing(studio: Studio, place: Path) -> None:
    before = book_hash(place)
    with pytest.raises(InputError) as refusal:
        import_into(studio, preview_text("Name,Hip\nAnna,98\n"), only_good=True)
    assert refusal.value.code == "import-not-ready"
    assert book_hash(place) == before


@pytest.mark.parametrize("after", [1, 2, 3])
def test_an_import_that_is_stopped_leaves_the_book_as_it_was(studio: Studio, place: Path, after: int) -> None:
    before = book_hash(place)
    asked: list[int] = []

    def should_stop() -> bool:
        asked.append(1)
        return len(asked) >= after

    with pytest.raises(InputError) as refusal:
        import_into(studio, many(1400), should_stop=should_stop)
    assert refusal.value.code == "import-stopped"
    assert book_hash(place) == before
    assert import_into(studio, many(1400)).stored == 1400


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork and SIGKILL")
def test_a_program_that_is_killed_in_the_middle_leaves_the_book_as_it_was(place: Path) -> None:
    Studio.open(place).close()
    before = book_hash(place)
    process = os.fork()
    if process == 0:
        import_into(
            Studio.open(place), many(1400), progress=lambda _done: os.kill(os.getpid(), signal.SIGKILL)
        )
        os._exit(0)
    _, status = os.waitpid(process, 0)
    assert os.WIFSIGNALED(status)
    assert book_hash(place) == before
    studio = Studio.open(place)
    assert import_into(studio, many(3)).stored == 3
    studio.close()


def test_two_imports_at_once_both_go_in_whole(place: Path) -> None:
    Studio.open(place).close()
    refusals: list[NotchbookError] = []

    def run() -> None:
        studio = Studio.open(place)
        try:
            import_into(studio, many(700))
        except NotchbookError as error:
            refusals.append(error)
        finally:
            studio.close()

    threads = [threading.Thread(target=run) for _ in range(2)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    studio = Studio.open(place)
    numbers = [entry.number for entry in studio.list_bodies()]
    studio.close()
    assert not refusals
    assert numbers == [f"M-{serial}" for serial in range(101, 1501)]


def test_the_file_is_only_read(tmp_path: Path, studio: Studio) -> None:
    path = tmp_path / "list.csv"
    path.write_text(LIST, encoding="utf-8")
    os.utime(path, (1, 1))
    import_into(studio, preview_file(path))
    assert (path.read_text(encoding="utf-8"), path.stat().st_mtime) == (LIST, 1)


def test_refusals_of_a_file_name_it(tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text('Name,Bust\n"Anna,94\n', encoding="utf-8")
    with pytest.raises(InputError) as refusal:
        preview_file(path)
    assert "list.csv" in refusal.value.text()
    with pytest.raises(InputError) as refusal:
        preview_file(tmp_path / "none.csv")
    assert refusal.value.code == "measures-file-missing"


def test_to_one_file_or_to_a_folder(tmp_path: Path) -> None:
    shown = preview_text(LIST)
    report = import_to_files(shown, tmp_path / "all.csv")
    assert [row.measures for row in read_bodies(report.files[0])] == list(shown.sets())
    report = import_to_files(shown, tmp_path / "bodies")
    assert [path.name for path in report.files] == ["anna.json", "bea-ü.json", "bea-ü-2.json"]
    assert [read_measures(path) for path in report.files] == list(shown.sets())


def test_the_sizes_of_a_chart_become_one_chart(tmp_path: Path, studio: Studio) -> None:
    shown = preview_text("Size;8;10\nBust (cm);80;84\nWaist (cm);62;66\n", "own", Answers(population="women"))
    bodies, charts = studio.list_bodies(), studio.list_charts()
    report = import_into(studio, shown)
    assert studio.list_bodies() == bodies
    assert studio.list_charts() == (*charts, *report.entries)
    chart = studio.open_chart(report.entries[0].id).chart
    assert (chart.labels, chart.row("bust_girth")) == (("8", "10"), (800, 840))
    assert (chart.name, chart.status, chart.population) == ("own", "imported", "women")
    import_to_files(shown, tmp_path / "own.json")
    assert read_chart(tmp_path / "own.json") == chart
    with pytest.raises(InputError):
        import_into(studio, shown, should_stop=lambda: True)
    assert len(studio.list_charts()) == len(charts) + 1


def test_nothing_that_is_there_is_written_over(tmp_path: Path) -> None:
    shown = preview_text(LIST)
    source = tmp_path / "list.csv"
    source.write_text(LIST, encoding="utf-8")
    folder = tmp_path / "bodies"
    folder.mkdir()
    (folder / "bea-ü.json").write_text("hers", encoding="utf-8")
    before = contents(tmp_path)
    for place in (source, folder):
        with pytest.raises((InputError, OutputError)) as refusal:
            import_to_files(shown, place, source=source)
        assert refusal.value.code in ("output-over-input", "import-file-exists")
    assert contents(tmp_path) == before


def test_files_are_all_there_or_none(tmp_path: Path) -> None:
    with pytest.raises(InputError):
        import_to_files(many(5), tmp_path / "bodies", should_stop=lambda: True)
    with pytest.raises(InputError):
        import_to_files(many(5), tmp_path / "all.csv", should_stop=lambda: True)
    with pytest.raises(OutputError):
        import_to_files(many(5), tmp_path / "no" / "bodies")
    assert not list(tmp_path.iterdir())


def test_what_was_exported_comes_back_equal(tmp_path: Path, studio: Studio) -> None:
    made = import_into(studio, preview_text(LIST)).entries
    sets = [measures for _entry, measures in studio.all_bodies()]
    for ending in ("csv", "json"):
        report = export_bodies(studio, tmp_path / f"all.{ending}", unit="cm")
        assert report.numbers == tuple(entry.number for entry in studio.list_bodies())
        assert list(preview_file(report.path).sets()) == sets
    one = export_bodies(studio, tmp_path / "one.csv", (made[0].number.lower(),), "in")
    assert read_measures(one.path).name == "Anna"
    assert list(preview_file(one.path, Answers()).sets()) == [read_measures(one.path)]
    two = export_bodies(studio, tmp_path / "two.csv", (made[0].number, made[2].number))
    assert [row.id for row in read_bodies(two.path)] == [made[0].number, made[2].number]


def test_exports_of_what_is_no_body_are_refused(tmp_path: Path, studio: Studio, place: Path) -> None:
    (style,) = studio.list_styles()
    for numbers, code in ((("M-999",), "book-number-missing"), ((style.number,), "entry-not-body")):
        with pytest.raises((BookError, InputError)) as refusal:
            export_bodies(studio, tmp_path / "x.csv", numbers)
        assert refusal.value.code == code
    empty = Studio.open(tmp_path / "empty.notchbook")
    with pytest.raises(InputError) as refusal:
        export_bodies(empty, tmp_path / "x.csv")
    assert refusal.value.code == "export-nothing"
    empty.close()
    assert not (tmp_path / "x.csv").exists()
