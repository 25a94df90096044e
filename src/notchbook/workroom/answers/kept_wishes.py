"""The wishes that are kept beside the numbers of steps, and whether they still come true."""

from notchbook.recipe import Replay
from notchbook.recipe.parameter_paths import path_in_words
from notchbook.recipe.targets import KeptTarget, kept_targets
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class KeptWish(Answer):
    """A number that was made to measure something: ``said`` is what.

    ``found_text`` is what it measures now, empty where it comes true or cannot be measured; ``parameter`` the
    path of the number.
    """

    parameter: str
    number: str
    said: str
    wanted_text: str
    found_text: str
    holds: bool


def kept_wishes(run: Replay, reader: Reader) -> dict[str, tuple[KeptWish, ...]]:
    """The kept wishes by the id of their step."""
    found: dict[str, tuple[KeptWish, ...]] = {}
    for one in kept_targets(run):
        found[one.record.id] = (*found.get(one.record.id, ()), _wish(one, reader))
    return found


def _wish(one: KeptTarget, reader: Reader) -> KeptWish:
    return KeptWish(
        parameter=one.target.parameter,
        number=path_in_words(one.target.parameter),
        said=one.target.wish if one.wish is None else one.wish.said,
        wanted_text=reader.fine(one.wanted),
        found_text="" if one.found is None or one.holds else reader.fine(one.found),
        holds=one.holds,
    )
