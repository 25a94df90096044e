"""Who may come in. Cookie and header names after the web's own standards: RFC 6265bis (SameSite), the
Fetch standard (Origin), RFC 9110 (421 Misdirected Request), CSP level 3."""

from collections.abc import Mapping

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.workroom.application import create_app

ADDRESS = "http://127.0.0.1:8000"


def stranger(studio: Studio) -> TestClient:
    return TestClient(create_app(studio, "key"), base_url=ADDRESS, follow_redirects=False)


def test_without_the_token_nothing_is_told(studio: Studio) -> None:
    client = stranger(studio)
    for path in ("/", "/api/shelf", "/?token=other", "/favicon.svg"):
        answer = client.get(path)
        assert answer.status_code == 401, path
        assert "Straight skirt" not in answer.text


def test_the_token_becomes_a_cookie_and_leaves_the_address(studio: Studio) -> None:
    answer = stranger(studio).get("/?token=key&unit=in")
    assert answer.status_code == 303
    assert answer.headers["location"] == "/?unit=in"
    words = {word.strip().lower() for word in answer.headers["set-cookie"].split(";")}
    assert {"notchbook-8000=key", "httponly", "samesite=strict"} <= words


def test_the_redirect_never_leads_elsewhere(studio: Studio) -> None:
    answer = stranger(studio).get("//evil.example/?token=key")
    assert not answer.headers["location"].startswith("//")


def test_with_the_cookie_the_book_opens(page: TestClient) -> None:
    assert page.get("/api/shelf").status_code == 200


@pytest.mark.parametrize("host", ["evil.example", "evil.example:8000", "127.0.0.1.evil.example", ""])
def test_a_foreign_name_is_refused_even_with_the_cookie(page: TestClient, host: str) -> None:
    assert page.get("/api/shelf", headers={"host": host}).status_code == 421


@pytest.mark.parametrize("host", ["127.0.0.1:5", "localhost:5", "localhost", "[::1]:5", "[::1]"])
def test_the_names_of_this_computer_pass(studio: Studio, host: str) -> None:
    client = TestClient(create_app(studio, ""), base_url=ADDRESS)
    assert client.get("/api/shelf", headers={"host": host}).status_code == 200


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://evil.example"},
        {"origin": "null"},
        {"origin": "http://127.0.0.1:9999"},
        {"origin": "https://127.0.0.1:8000"},
        {"sec-fetch-site": "cross-site"},
    ],
)
def test_another_site_may_change_nothing(
    page: TestClient, studio: Studio, style: int, headers: Mapping[str, str]
) -> None:
    sent = {"expected_version": 1, "edit": {"do": "remove-step", "step": "waistband-1"}}
    assert page.post(f"/api/styles/{style}/edits", json=sent, headers=headers).status_code == 403
    assert studio.list_styles()[0].version == 1


def test_own_origin_passes(page: TestClient, style: int) -> None:
    sent = {"expected_version": 1, "edit": {"do": "remove-step", "step": "waistband-1"}}
    answer = page.post(f"/api/styles/{style}/edits", json=sent, headers={"origin": ADDRESS})
    assert answer.status_code == 200


def test_every_answer_has_the_security_headers_and_none_allows_other_sites(page: TestClient) -> None:
    for path in ("/api/shelf", "/nothing", "/api/styles/999"):
        headers = page.get(path).headers
        assert "default-src 'self'" in headers["content-security-policy"]
        assert headers["x-content-type-options"] == "nosniff"
        assert not [name for name in headers if name.startswith("access-control")]


def test_the_policy_names_no_foreign_host(page: TestClient) -> None:
    policy = page.get("/api/shelf").headers["content-security-policy"]
    sources = {word for rule in policy.split(";") for word in rule.split()[1:]}
    assert sources <= {"'self'", "'none'", "'unsafe-inline'", "data:"}
    assert "script-src" not in policy  # scripts follow default-src: the page's own files alone
