"""How far the search for a wish is, asked while its request waits, and stopped."""

from typing import Annotated

from fastapi import APIRouter, Depends, Request

from notchbook.workroom.answers.wish_search import WishSearchAnswer, wish_search_answer
from notchbook.workroom.wish_searches import WishSearches

router = APIRouter(prefix="/api/wish-searches")


def _searches(request: Request) -> WishSearches:
    searches = request.app.state.wish_searches
    assert isinstance(searches, WishSearches)
    return searches


SearchesOf = Annotated[WishSearches, Depends(_searches)]


@router.get("/{word}")
def read_wish_search(word: str, searches: SearchesOf) -> WishSearchAnswer:
    """How far it is."""
    return wish_search_answer(searches.find(word))


@router.post("/{word}/stop")
def stop_wish_search(word: str, searches: SearchesOf) -> WishSearchAnswer:
    """Ask it to stop before its next trial; the request that waits for it is answered then."""
    search = searches.find(word)
    if search is not None:
        search.stopping.set()
    return wish_search_answer(search)
