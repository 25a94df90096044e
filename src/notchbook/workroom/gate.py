"""Who may come in: the page of this computer with its token, and nobody else.

Another site in the same browser must neither read nor change the book: a foreign Host (a name that was
bent to this computer) and a foreign Origin are refused before anything else looks at the request.
"""

import hmac
from collections.abc import Sequence
from urllib.parse import parse_qs, urlencode

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import cookie_parser
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from notchbook.errors import InputError

_COOKIE = "notchbook"

_HEADERS = {
    "content-security-policy": (
        "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; object-src 'none';"
        " base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
    ),
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "x-frame-options": "DENY",
}


class Gate:
    """Lets a request through when it asks for one of ``hosts`` and carries the token.

    The token comes once in the address (``?token=``), is put into a cookie that scripts cannot read and
    other sites cannot send, and goes from the address. An empty ``token`` wants none (for tests).
    """

    def __init__(self, app: ASGIApp, token: str, hosts: Sequence[str]) -> None:
        self._app = app
        self._token = token
        self._hosts = frozenset(hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a refusal, or hand the request on; the security headers go with every answer."""
        if scope["type"] == "lifespan":
            await self._app(scope, receive, send)
            return
        if scope["type"] != "http":
            return  # the workroom has no sockets
        answer = self._answer(scope)

        async def guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                MutableHeaders(scope=message).update(_HEADERS)
            await send(message)

        await (answer or self._app)(scope, receive, guarded)

    def _answer(self, scope: Scope) -> Response | None:
        """The refusal or the redirect; None when the request may pass."""
        headers = Headers(scope=scope)
        host = headers.get("host", "")
        if _name_of(host) not in self._hosts:
            return _refused(421, "workroom-foreign-host")
        origin = headers.get("origin")
        if origin is not None and origin != f"{scope['scheme']}://{host}":
            return _refused(403, "workroom-foreign-origin")
        if headers.get("sec-fetch-site") == "cross-site" and scope["method"] != "GET":
            return _refused(403, "workroom-foreign-origin")
        query = parse_qs(scope["query_string"].decode("latin-1"))
        if "token" in query and self._is_token(query["token"][0]):
            return self._welcome(scope["path"], query, host)
        kept = cookie_parser(headers.get("cookie", "")).get(_cookie_of(host), "")
        if self._token and not self._is_token(kept):
            return _refused(401, "workroom-locked")
        return None

    def _is_token(self, given: str) -> bool:
        return hmac.compare_digest(given.encode(), self._token.encode())

    def _welcome(self, path: str, query: dict[str, list[str]], host: str) -> Response:
        rest = urlencode({key: value for key, value in query.items() if key != "token"}, doseq=True)
        answer = RedirectResponse("/" + path.lstrip("/") + (f"?{rest}" if rest else ""), status_code=303)
        answer.set_cookie(_cookie_of(host), self._token, httponly=True, samesite="strict")
        return answer


def _cookie_of(host: str) -> str:
    """The name of the cookie: one for each port, for browsers keep cookies by the name of the host alone
    and two workrooms may be open at once."""
    port = host.rsplit(":", 1)[-1]
    return f"{_COOKIE}-{port}" if port.isdigit() else _COOKIE


def _name_of(host: str) -> str:
    """The name in a Host header, without its port: ``[::1]:80`` gives ``[::1]``."""
    return host.rsplit(":", 1)[0] if not host.endswith("]") else host


def _refused(status: int, code: str) -> Response:
    error = InputError(code)
    return PlainTextResponse(f"{error.text()}\n{error.next_step()}\n", status_code=status)
