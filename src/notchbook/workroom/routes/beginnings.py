"""With what a style for a body may begin."""

from fastapi import APIRouter

from notchbook.workroom.answers.beginning import BlockBeginning, beginnings
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/bodies/{body}/beginnings")


@router.get("")
def read_beginnings(body: int, studio: StudioOf, reader: ReaderOf) -> tuple[BlockBeginning, ...]:
    """Every block with its picture, and what it needs of this body and finds or misses there."""
    return beginnings(studio.open_body(body).measures, reader)
