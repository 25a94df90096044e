"""The server of the workroom: routes over one studio, behind the gate."""

from collections.abc import Sequence
from pathlib import Path

from fastapi import FastAPI
from fastapi.routing import APIRoute

from notchbook import __version__
from notchbook.app.studio import Studio
from notchbook.workroom.answers.refusal import Refusal
from notchbook.workroom.gate import Gate
from notchbook.workroom.import_jobs import ImportJobs
from notchbook.workroom.page import STATIC, serve_page
from notchbook.workroom.refusing import refuse_in_words
from notchbook.workroom.routes import (
    beginnings,
    bodies,
    charts,
    comparing,
    estimates,
    figure,
    importing,
    made_to_measure,
    padding,
    personal_data,
    reports,
    shelf,
    sizes,
    styles,
    vocabulary,
    why_so,
    wish_searches,
)
from notchbook.workroom.size_jobs import SizeJobs
from notchbook.workroom.wish_searches import WishSearches

LOCAL_HOSTS = ("127.0.0.1", "localhost", "[::1]")

_STYLE_ROUTES = (shelf, styles, reports, beginnings, made_to_measure, wish_searches, why_so, sizes)
_BODY_ROUTES = (bodies, estimates, figure, vocabulary, comparing, padding, personal_data)
_CHART_ROUTES = (charts, importing)


def create_app(
    studio: Studio, token: str, hosts: Sequence[str] = LOCAL_HOSTS, static: Path = STATIC
) -> FastAPI:
    """The server over an open studio. ``hosts`` are the names under which it may be asked."""
    refused: dict[int | str, dict[str, object]] = {409: {"model": Refusal}, 422: {"model": Refusal}}
    app = FastAPI(
        title="Notchbook workroom",
        version=__version__,
        docs_url=None,
        redoc_url=None,
        openapi_url=None,
        responses=refused,
        generate_unique_id_function=_operation_name,
    )
    app.state.studio = studio
    app.state.import_jobs = ImportJobs()
    app.state.size_jobs = SizeJobs()
    app.state.wish_searches = WishSearches()
    for routes in (*_STYLE_ROUTES, *_BODY_ROUTES, *_CHART_ROUTES):
        app.include_router(routes.router)
    serve_page(app, static)
    refuse_in_words(app)
    app.add_middleware(Gate, token=token, hosts=hosts)
    return app


def _operation_name(route: APIRoute) -> str:
    return route.name
