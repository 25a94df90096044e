"""Classes of the allowance table as they are read on a label, in `cut` and on the page."""

from collections import Counter

import pytest

from lower_sheets import lower_bodies
from notchbook.app.papers import cut_ready, job_of
from notchbook.app.rack.styles import rack
from notchbook.cli.show_pattern import allowances
from notchbook.finish import production_table
from notchbook.finish.allowance_words import class_words, edge_words, is_hem
from notchbook.output.label_lines import allowance_words
from notchbook.recipe import replay
from notchbook.units import LengthStyle

STYLES = {style.stem: style.recipe for style in rack()}
CLASSES = tuple(production_table().allowances)

TABLE_NAMES = (
    *(name.replace("_", " ") for name in CLASSES if name.startswith("hem_")),
    "zip invisible",
    "zip lapped",
)


def test_among_all_classes_each_is_called_something_else() -> None:
    counted = Counter(class_words(name) for name in CLASSES)
    assert [words for words, count in counted.items() if count > 1] == []


@pytest.mark.parametrize("name", CLASSES)
def test_no_class_is_read_with_the_signs_of_its_name(name: str) -> None:
    assert "_" not in edge_words(name) + class_words(name)


def test_on_a_piece_a_hem_is_the_hem_and_a_slit_is_none() -> None:
    hems = {name for name in CLASSES if edge_words(name) == "hem"}
    assert hems == {name for name in CLASSES if name.startswith("hem") and name != "hem_slit"}
    assert edge_words("hem_slit") == "slit"
    assert class_words("hem_trousers") == "hem, trousers"
    assert is_hem("hem") and not is_hem("hem_slit")


def test_a_class_of_the_house_is_called_by_its_own_name() -> None:
    assert edge_words("french_seam") == class_words("french_seam") == "french seam"


@pytest.mark.parametrize("stem", sorted(STYLES))
def test_labels_and_the_list_of_pieces_say_words_of_the_trade(stem: str) -> None:
    run = replay(STYLES[stem], dict(lower_bodies())["medium-92"])
    job = job_of(run, "", despite_findings=True)
    said = [
        words
        for piece in cut_ready(job).pieces
        for words in (allowance_words(piece, job.info), ", ".join(allowances(piece, LengthStyle())))
    ]
    assert [words for words in said for name in TABLE_NAMES if name in words] == []
    assert any("neckline" in words or "hem" in words for words in said)
