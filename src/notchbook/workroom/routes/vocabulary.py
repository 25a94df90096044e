"""The words of the measures."""

from fastapi import APIRouter

from notchbook.workroom.answers.vocabulary import Vocabulary, vocabulary
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/vocabulary")


@router.get("")
def read_vocabulary(studio: StudioOf, reader: ReaderOf) -> Vocabulary:
    """What every measure is and how it is taken, in measuring order; what each block asks for."""
    return vocabulary(studio, reader)
