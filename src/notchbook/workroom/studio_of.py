"""The studio that a request works on."""

from typing import Annotated

from fastapi import Depends, Request

from notchbook.app.studio import Studio


def _studio(request: Request) -> Studio:
    studio = request.app.state.studio
    assert isinstance(studio, Studio)
    return studio


StudioOf = Annotated[Studio, Depends(_studio)]
