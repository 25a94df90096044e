"""With what a style for a body may begin."""

from fastapi import APIRouter, Response

from notchbook.app.rack.pictures import pictured_style
from notchbook.workroom.answers.beginning import (
    BlockBeginning,
    PicturePiece,
    RackBeginning,
    beginnings,
    block_picture,
    rack_beginnings,
)
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api")


@router.get("/bodies/{body}/beginnings")
def read_beginnings(body: int, studio: StudioOf, reader: ReaderOf) -> tuple[BlockBeginning, ...]:
    """Every block, and what it needs of this body and finds or misses there."""
    return beginnings(studio.open_body(body).measures, reader)


@router.get("/bodies/{body}/rack")
def read_rack(body: int, studio: StudioOf, reader: ReaderOf) -> tuple[RackBeginning, ...]:
    """Every style of the rack, and what it needs of this body and finds or misses there."""
    return rack_beginnings(studio.open_body(body).measures, reader)


@router.get("/blocks/{block}/picture")
def read_block_picture(block: str) -> tuple[PicturePiece, ...]:
    """The picture of a block, drafted when it is first asked for, so that no choice waits for all."""
    return block_picture(block)


@router.get("/rack/{number}/picture", response_class=Response)
def read_rack_picture(number: str) -> Response:
    """Front and back of a style of the rack, drawn when it is first asked for."""
    return Response(pictured_style(number), media_type="image/svg+xml")
