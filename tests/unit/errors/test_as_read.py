"""A message without a case."""

import pytest

from notchbook.errors import as_read, catalogue, with_facts_named


@pytest.mark.parametrize(
    ("template", "read"),
    [
        ("{where}{label} of {given} is {by:length} off.", "… of … is … off."),
        ("{hint}Take it once more.", "Take it once more."),
        ("{where}the “{id}” stands twice.", "The “…” stands twice."),
        ("Plain {{words}}.", "Plain {words}."),
    ],
)
def test_facts_become_an_ellipsis(template: str, read: str) -> None:
    assert as_read(template) == read


def test_no_message_shows_a_name_of_a_fact() -> None:
    for entry in catalogue().values():
        for text in (as_read(entry.message), as_read(entry.next_step)):
            assert "{" not in text, entry.code


@pytest.mark.parametrize(
    ("template", "read"),
    [
        ("{where}{label} of {given} is {by:length} off.", "‹label› of ‹given› is ‹by› off."),
        ("{across_back} is wide.{dart}", "‹across back› is wide. ‹dart›"),
    ],
)
def test_on_a_help_page_each_fact_is_called_by_its_name(template: str, read: str) -> None:
    assert with_facts_named(template) == read
