"""The refusals: their words, their kinds, and that they survive a trip to another process."""

import pickle

import pytest

from notchbook.errors import (
    BookError,
    DraftRefused,
    Entry,
    GeometryError,
    HouseFault,
    InputError,
    NameLost,
    NotchbookError,
    OutputError,
    StepRefused,
)
from notchbook.errors import base as base_module

ENTRY = Entry(
    code="seam-open",
    message="The seam {seam} is {gap:length} open.",
    next_step="Walk it again between {ends}.",
    why="First. Second.",
    layer="pattern",
)


@pytest.fixture
def words(monkeypatch: pytest.MonkeyPatch) -> None:
    """A catalogue with one message, so that no test depends on today's words."""
    monkeypatch.setattr(base_module, "entry", {ENTRY.code: ENTRY}.__getitem__)


@pytest.mark.usefixtures("words")
def test_a_refusal_says_what_is_wrong_what_to_do_and_its_code() -> None:
    error = StepRefused("seam-open", seam="side", gap=2.04, ends=("waist", "hem"))
    assert error.text() == "The seam side is 2.0 mm open."
    assert error.next_step() == "Walk it again between waist, hem."
    assert str(error) == "The seam side is 2.0 mm open. Walk it again between waist, hem. [seam-open]"


@pytest.mark.usefixtures("words")
def test_lengths_are_written_in_the_unit_of_the_reader() -> None:
    error = StepRefused("seam-open", seam="side", gap=25.4, ends=())
    # 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
    assert error.text(lambda mm: f"{mm / 25.4:g} in") == "The seam side is 1 in open."


@pytest.mark.usefixtures("words")
def test_a_refusal_crosses_to_another_process_whole() -> None:
    error = DraftRefused("seam-open", seam="side", gap=2.0, ends=["waist"])
    back = pickle.loads(pickle.dumps(error))
    assert type(back) is DraftRefused
    assert (back.code, back.facts, str(back)) == (error.code, error.facts, str(error))


@pytest.mark.usefixtures("words")
def test_a_code_without_words_is_our_fault_not_a_refusal() -> None:
    with pytest.raises(KeyError):
        StepRefused("no-such-code").text()


@pytest.mark.parametrize(
    ("kind", "builtin"),
    [
        (InputError, ValueError),
        (GeometryError, ValueError),
        (NameLost, LookupError),
        (OutputError, OSError),
        (HouseFault, AssertionError),
        (DraftRefused, StepRefused),
        (StepRefused, NotchbookError),
        (BookError, NotchbookError),
    ],
)
def test_each_kind_is_also_what_python_would_raise(
    kind: type[NotchbookError], builtin: type[Exception]
) -> None:
    error = kind("seam-open", seam="side")
    assert isinstance(error, builtin)
    assert isinstance(error, NotchbookError)
    assert error.code == "seam-open"
    assert error.facts == {"seam": "side"}


def test_an_empty_list_of_facts_is_said_as_none() -> None:
    refusal = NameLost(
        "name-lost",
        name="skirt.front/hem",
        reason="it was cut off",
        wanted="edge",
        by="no step",
        candidates=(),
    )
    assert "Near: none." in refusal.next_step()
