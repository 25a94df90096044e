"""A block of two words may be typed with a hyphen."""

from notchbook.cli.options import block_word, garment_word


def test_a_hyphen_stands_for_the_line_below() -> None:
    assert block_word("circle-skirt") == "circle_skirt"
    assert block_word("skirt") == "skirt"
    assert block_word("") == ""
    assert block_word(None) is None


def test_the_path_of_a_style_keeps_its_hyphens() -> None:
    assert garment_word("gored-skirt") == "gored_skirt"
    assert garment_word("my-skirt.json") == "my-skirt.json"
