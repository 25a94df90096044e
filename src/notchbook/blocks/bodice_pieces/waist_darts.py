"""The words of the darts at the waist."""

_WORDS: dict[int, tuple[str, ...]] = {
    0: (),
    1: ("waist_dart",),
    2: ("waist_dart_center", "waist_dart_side"),
}


def waist_words(count: int, first_is_bust_dart: bool = False) -> tuple[str, ...]:
    """The words of so many darts from the center outward; the first may be one with the bust dart."""
    words = _WORDS[count]
    return ("bust_dart", *words[1:]) if first_is_bust_dart and words else words
