"""The page's files: served when they are there, else a plain page that says what is missing."""

from pathlib import Path

from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.workroom.application import create_app


def page_with(studio: Studio, static: Path) -> TestClient:
    return TestClient(create_app(studio, "", static=static), base_url="http://127.0.0.1")


def test_without_a_page_it_says_how_to_make_one(studio: Studio, tmp_path: Path) -> None:
    answer = page_with(studio, tmp_path / "none").get("/")
    assert answer.status_code == 503
    assert "npm run build" in answer.text


def test_the_reason_of_the_build_is_told_and_not_run(studio: Studio, tmp_path: Path) -> None:
    (tmp_path / "MISSING").write_text("The registry <b>slept</b>.\n")
    answer = page_with(studio, tmp_path)
    assert "The registry &lt;b&gt;slept&lt;/b&gt;." in answer.get("/").text


def test_the_page_and_its_files_are_served(studio: Studio, tmp_path: Path) -> None:
    (tmp_path / "assets").mkdir()
    (tmp_path / "index.html").write_text("<p>here</p>")
    (tmp_path / "assets" / "index-1.js").write_text("1")
    (tmp_path / "secret.txt").write_text("no")
    page = page_with(studio, tmp_path)
    assert page.get("/").text == "<p>here</p>"
    assert page.get("/assets/index-1.js").text == "1"
    assert page.get("/assets/../secret.txt").status_code == 404
    assert page.get("/assets/%2e%2e/secret.txt").status_code == 404
