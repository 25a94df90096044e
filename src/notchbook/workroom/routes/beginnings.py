"""With what a style for a body may begin."""

from fastapi import APIRouter

from notchbook.workroom.answers.beginning import BlockBeginning, PicturePiece, beginnings, block_picture
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api")


@router.get("/bodies/{body}/beginnings")
def read_beginnings(body: int, studio: StudioOf, reader: ReaderOf) -> tuple[BlockBeginning, ...]:
    """Every block, and what it needs of this body and finds or misses there."""
    return beginnings(studio.open_body(body).measures, reader)


@router.get("/blocks/{block}/picture")
def read_block_picture(block: str) -> tuple[PicturePiece, ...]:
    """The picture of a block, drafted when it is first asked for, so that no choice waits for all."""
    return block_picture(block)
