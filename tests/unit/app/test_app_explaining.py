"""The help page of a code can be read without a case at hand."""

from notchbook.app.explaining import explain
from notchbook.checks import all_checks
from notchbook.errors import catalogue


def test_no_page_shows_an_ellipsis_or_a_brace() -> None:
    codes = {*catalogue(), *(code for check in all_checks() for code in (check.id, *check.messages))}
    for code in codes:
        page = explain(code)
        for text in (page.title, page.next_step):
            assert not {"…", "{", "}"} & set(text), (code, text)


def test_a_page_of_many_facts_tells_them_apart() -> None:
    assert "‹first› and ‹second› do not end at one waist" in explain("lengths-to-two-waists").title
