"""Every error becomes an answer in words; a traceback goes to the log of the server alone."""

import logging
from typing import get_args

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException

from notchbook.errors import HouseFault, InputError, NotchbookError
from notchbook.units import Unit
from notchbook.workroom.answers.refusal import refusal
from notchbook.workroom.reader import Reader

_LOG = logging.getLogger("notchbook.workroom")

_STATUS = {"book-conflict": 409, "book-moved-on": 409, "book-document-missing": 404, "workroom-address": 404}
"""What is refused otherwise is 422: understood, and it cannot be done."""


def refuse_in_words(app: FastAPI) -> None:
    """Let the app answer every error as a :class:`Refusal`."""

    @app.exception_handler(NotchbookError)
    def known(request: Request, error: NotchbookError) -> JSONResponse:
        if isinstance(error, HouseFault):
            return _fault(request, error)
        return _answer(request, error, _STATUS.get(error.code, 422))

    @app.exception_handler(RequestValidationError)
    def malformed(request: Request, error: RequestValidationError) -> JSONResponse:
        first = error.errors()[0]
        place = ".".join(str(part) for part in first["loc"])
        return _answer(request, InputError("workroom-request", place=place, detail=first["msg"]), 422)

    @app.exception_handler(HTTPException)
    def unknown(request: Request, error: HTTPException) -> JSONResponse:
        refused = InputError("workroom-address", path=request.url.path)
        return _answer(request, refused, error.status_code)

    @app.exception_handler(Exception)
    def broken(request: Request, error: Exception) -> JSONResponse:
        return _fault(request, error)


def _fault(request: Request, error: Exception) -> JSONResponse:
    _LOG.error("fault at %s", request.url.path, exc_info=error)
    return _answer(request, InputError("workroom-fault", kind=type(error).__name__), 500)


def _answer(request: Request, error: NotchbookError, status: int) -> JSONResponse:
    asked = request.query_params.get("unit")
    units: dict[str, Unit] = {unit: unit for unit in get_args(Unit)}
    content = refusal(error, Reader(units.get(asked or "", "cm")))
    return JSONResponse(content.model_dump(mode="json"), status_code=status)
