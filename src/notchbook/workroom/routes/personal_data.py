"""Personal data of a client: what holds it, a code, an archive to hand out, an erasure."""

from fastapi import APIRouter, Response

from notchbook.errors import InputError
from notchbook.workroom.answers.personal_data import (
    ErasedClient,
    PersonalData,
    UnderCode,
    erased_client,
    personal_data,
    under_code,
)
from notchbook.workroom.asked.personal_data import EraseClient, PutUnderCode
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/bodies/{body}")


@router.get("/personal-data")
def read_personal_data(body: int, studio: StudioOf) -> PersonalData:
    """All that holds her data; nothing is changed."""
    return personal_data(studio.erasure_plan(body), studio.free_code(body))


@router.post("/code")
def put_under_code(body: int, asked: PutUnderCode, studio: StudioOf) -> UnderCode:
    """Put a code in the stead of her name. 409 when another edit came first."""
    return under_code(studio.keep_under_code(body, asked.expected_version, asked.wish()))


@router.get("/export", response_class=Response, responses={200: {"content": {"application/zip": {}}}})
def read_export(body: int, studio: StudioOf) -> Response:
    """Her data as one archive of plain files; its name has the number of her entry, never her name."""
    number = studio.open_body(body).number
    headers = {"Content-Disposition": f'attachment; filename="{number}.zip"', "Cache-Control": "no-store"}
    return Response(studio.client_archive(body), media_type="application/zip", headers=headers)


@router.post("/erase")
def erase_client(body: int, asked: EraseClient, studio: StudioOf) -> ErasedClient:
    """Erase her, as asked. 409 when another edit came first; 422 unless ``confirm`` names her."""
    entry = studio.open_body(body)
    name = entry.measures.name
    if asked.confirm.strip() not in (entry.number, name):
        raise InputError("erasure-not-confirmed", number=entry.number, name=name)
    return erased_client(studio.erase_client(body, asked.expected_version, asked.wish()))
