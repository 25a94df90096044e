"""How far the search for a wish is."""

from notchbook.workroom.answers.form import Answer
from notchbook.workroom.wish_searches import WishSearch


class WishSearchAnswer(Answer):
    """What was ``tried`` so far, and ``of`` how many, None where nobody knows beforehand; ``running`` says
    whether it goes on."""

    running: bool
    tried: int
    of: int | None


def wish_search_answer(search: WishSearch | None) -> WishSearchAnswer:
    """How far it is; none runs any more where there is no search."""
    if search is None:
        return WishSearchAnswer(running=False, tried=0, of=None)
    return WishSearchAnswer(running=True, tried=search.tried, of=search.of)
