"""Who may ask the desk: one who came in by its token, from its own address; and what a page may load."""

from __future__ import annotations

import hmac
import secrets
from collections.abc import Mapping
from http.cookies import CookieError, SimpleCookie
from typing import Final
from urllib.parse import parse_qs

from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

TOKEN: Final = "token"
"""The part of the opened address that carries the token; it is exchanged for a cookie and gone from the address."""
SAFE: Final = ("GET", "HEAD")
MOST_BYTES: Final = 6_000_000
"""The largest body that is read: a workbook of a log, and then some."""
OPEN: Final = ("/static/", "/enter")
"""Addresses that show nothing of anyone."""
POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
    "frame-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'self'"
)
HEADERS: Final[Mapping[str, str]] = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cache-Control": "no-store",
}
"""The referrer policy is `same-origin` and not stricter: under `no-referrer` a browser sends a plain form's origin as
null (Fetch standard, 3.2 `Origin` header), and such a form would be refused."""
REFUSED: Final = (
    "The desk does not know this browser, and nothing was done: the desk was closed and opened again, or this page was "
    "opened by hand. Run `setwright desk` in a terminal: it opens the desk here. Or open the whole address that it "
    "printed, with all that stands after the question mark."
)
FOREIGN: Final = (
    "This request did not come from the desk's own page, and nothing was done. Open the desk by the address that it "
    "printed, and ask there."
)
TOO_LARGE: Final = f"The file is larger than {MOST_BYTES // 1_000_000} MB; nothing was read. Send a smaller one."


class Keys:
    """The secrets of one desk: the token of its address, and those who came in by it or by another way."""

    def __init__(self, secure: bool = False) -> None:
        """`secure` where the desk is served by TLS."""
        self.token, self.secure = secrets.token_urlsafe(24), secure
        self.cookie = f"setwright-{secrets.token_hex(4)}"
        """Of this desk alone: browsers share cookies between the ports of a host."""
        self._browsers: set[str] = set()

    def is_token(self, said: str) -> bool:
        """Whether a text is the desk's token."""
        return hmac.compare_digest(said.encode(), self.token.encode())

    def admit(self, response: Response) -> Response:
        """A response that lets its browser in from now on, until the desk is closed."""
        secret = secrets.token_urlsafe(24)
        self._browsers.add(secret)
        response.set_cookie(self.cookie, secret, httponly=True, samesite="strict", secure=self.secure, path="/")
        return response

    def knows(self, secret: str) -> bool:
        """Whether a cookie's secret is of a browser that was let in."""
        return any(hmac.compare_digest(secret.encode(), one.encode()) for one in self._browsers)


class Guard:
    """Refuses what comes from another site, another host's name or without the cookie, and sets the headers."""

    def __init__(self, app: ASGIApp, keys: Keys, hosts: frozenset[str]) -> None:
        """`hosts` are the names, with the port, under which the desk answers."""
        self._app, self._keys, self._hosts = app, keys, hosts

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or pass on; as ASGI has it."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        answer = self._refusal(scope) or self._entrance(scope)
        if answer is not None:
            await answer(scope, receive, _with_headers(send))
            return
        await self._app(scope, _bounded(receive), _with_headers(send))

    def _refusal(self, scope: Scope) -> Response | None:
        """The refusal of a request that is not from the desk's own page; None where it may go on."""
        headers = {name.decode("latin-1"): value.decode("latin-1") for name, value in scope["headers"]}
        if headers.get("host", "").casefold() not in self._hosts:
            return PlainTextResponse(FOREIGN, 421)
        if scope["method"] not in SAFE and not self._is_own(headers):
            return PlainTextResponse(FOREIGN, 403)
        length = headers.get("content-length", "0")
        if not length.isdigit() or int(length) > MOST_BYTES:
            return PlainTextResponse(TOO_LARGE, 413)
        return None

    def _is_own(self, headers: Mapping[str, str]) -> bool:
        """Whether a request that changes something says that it comes from the desk's own page."""
        scheme = "https" if self._keys.secure else "http"
        return headers.get("origin", "") in {f"{scheme}://{host}" for host in self._hosts}

    def _entrance(self, scope: Scope) -> Response | None:
        """The exchange of the token for a cookie, or the refusal of one who has neither; None for those who are in."""
        path: str = scope["path"]
        said = parse_qs(scope["query_string"].decode("latin-1")).get(TOKEN, [""])[0]
        if said and scope["method"] == "GET" and self._keys.is_token(said):
            return self._keys.admit(RedirectResponse(path or "/", 303))
        if path.startswith(OPEN) or self._keys.knows(self._cookie(scope)):
            return None
        return RedirectResponse("/enter", 303) if self._keys.secure else PlainTextResponse(REFUSED, 403)

    def _cookie(self, scope: Scope) -> str:
        jar = SimpleCookie()
        for name, value in scope["headers"]:
            if name == b"cookie":
                try:
                    jar.load(value.decode("latin-1"))
                except CookieError:
                    return ""
        found = jar.get(self._keys.cookie)
        return found.value if found else ""


def _with_headers(send: Send) -> Send:
    """A `send` that adds the headers which every answer carries, where it does not set its own."""

    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            there = {name.lower() for name, _ in message["headers"]}
            more = [(name.lower().encode(), value.encode()) for name, value in HEADERS.items()]
            message["headers"] = [*message["headers"], *(pair for pair in more if pair[0] not in there)]
        await send(message)

    return sending


def _bounded(receive: Receive) -> Receive:
    """A `receive` that ends a body which is larger than it said."""
    read = 0

    async def receiving() -> Message:
        nonlocal read
        message = await receive()
        read += len(message.get("body", b""))
        return {"type": "http.disconnect"} if read > MOST_BYTES else message

    return receiving
