"""A workroom over a book with the demonstration, asked without a network."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.workroom.application import create_app

ADDRESS = "http://127.0.0.1:8000"


@pytest.fixture
def studio(tmp_path: Path) -> Iterator[Studio]:
    opened = Studio.open(tmp_path / "studio.notchbook")
    opened.first_time()
    yield opened
    opened.close()


@pytest.fixture
def page(studio: Studio) -> TestClient:
    """The page with its cookie."""
    client = TestClient(create_app(studio, "key"), base_url=ADDRESS, raise_server_exceptions=False)
    client.get("/?token=key")
    return client


@pytest.fixture
def style(studio: Studio) -> int:
    return studio.list_styles()[0].id


@pytest.fixture
def body(studio: Studio) -> int:
    return studio.list_bodies()[0].id
