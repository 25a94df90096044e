"""Numbers, names, words for edits, hashes and stored times."""

from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.book.kinds import BookEvent, check_edit_kind, entry_kind
from notchbook.book.numbers import EntryNumber, parse_number, parse_series
from notchbook.book.settings import time_of, time_text
from notchbook.book.texts import canonical_json, check_name, check_text, digest, search_form
from notchbook.errors import BookError


@given(st.from_regex(r"[A-Z]{1,6}", fullmatch=True), st.integers(0, 999_999))
def test_a_number_reads_back(series: str, serial: int) -> None:
    number = EntryNumber(series, serial)
    assert parse_number(number.text) == number
    assert parse_number(f"  {number.text.lower()} ") == number


def test_leading_zeros_are_the_same_number() -> None:
    assert parse_number("s-0104") == parse_number("S-104")


@pytest.mark.parametrize("text", ["", "S", "104", "S104", "S-", "-104", "S-1.5", "S-1234567", "Ł-1", "S-١"])
def test_other_forms_are_no_numbers(text: str) -> None:
    with pytest.raises(BookError) as refused:
        parse_number(text)
    assert refused.value.code == "book-number-malformed"


def test_a_series_is_letters() -> None:
    assert parse_series(" s ") == "S"
    with pytest.raises(BookError):
        parse_series("S-1")


@pytest.mark.parametrize("kind", ["move-dart", "step", "size-38"])
def test_words_for_edits(kind: str) -> None:
    assert check_edit_kind(kind) == kind


@pytest.mark.parametrize("kind", ["", "Move", "a--b", "-a", "a b", "x" * 61, *BookEvent])
def test_words_that_no_edit_may_have(kind: str) -> None:
    with pytest.raises(BookError) as refused:
        check_edit_kind(kind)
    assert refused.value.code == "book-edit-kind-refused"
    assert "bring-back" in refused.value.next_step()


def test_an_unknown_kind_of_entry() -> None:
    with pytest.raises(BookError) as refused:
        entry_kind("garment")
    assert "style, block, measures" in str(refused.value)


@pytest.mark.parametrize("name", ["", "  ", "two\nlines", "a\x00b", "x" * 201])
def test_names_that_are_refused(name: str) -> None:
    with pytest.raises(BookError) as refused:
        check_name(name)
    assert refused.value.code == "book-name-refused"


def test_half_a_surrogate_pair_is_refused() -> None:
    with pytest.raises(BookError) as refused:
        check_text("ab\ud83e", "note")
    assert refused.value.facts == {"where": "note", "position": 2}


def test_the_digest_is_sha256() -> None:
    """Source: FIPS 180-2, appendix B.1, the message "abc"."""
    assert digest("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


@pytest.mark.parametrize(
    ("text", "sought"), [("Café RACER", "cafe racer"), ("Ärmel", "armel"), ("Maß", "mass"), ("ﬁt", "fit")]
)
def test_search_without_case_and_accents(text: str, sought: str) -> None:
    assert search_form(text) == sought


def test_canonical_json_has_one_form() -> None:
    assert canonical_json({"b": 1, "a": "ü"}) == canonical_json({"a": "ü", "b": 1}) == '{"a":"\\u00fc","b":1}'
    with pytest.raises(ValueError, match="not JSON compliant"):
        canonical_json({"a": float("nan")})


@given(st.datetimes(timezones=st.just(UTC)), st.datetimes(timezones=st.just(UTC)))
def test_stored_times_read_back_and_sort(first: datetime, second: datetime) -> None:
    assert time_of(time_text(first)) == first
    assert (time_text(first) < time_text(second)) == (first < second)
    assert len(time_text(first)) == 27


def test_times_are_stored_in_utc() -> None:
    noon = datetime(2026, 7, 1, 12, tzinfo=timezone(timedelta(hours=2)))
    assert time_text(noon) == "2026-07-01T10:00:00.000000Z"
