"""A refusal is written in the unit in which its command answers."""

import pytest

from notchbook.cli.typed_unit import typed_unit


@pytest.mark.parametrize(
    "verb", ["draft", "check", "compare", "cut", "explain", "make-it-measure", "mtm", "print", "sewing-order"]
)
def test_verbs_that_answer_in_centimeters_refuse_in_them(verb: str) -> None:
    assert typed_unit([verb, "style.json"]) == "cm"
    assert typed_unit([verb, "style.json", "--unit", "in"]) == "in"


def test_others_write_millimeters() -> None:
    assert typed_unit(["measures", "list"]) == "mm"
