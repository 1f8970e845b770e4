"""Who may ask the desk, and what it sends with each answer."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from urllib.parse import quote

import pytest
from at_desk import HOST, JSON, ORIGIN, PHRASE
from starlette.testclient import TestClient

from setwright.solver.book.clients import client_of
from setwright.solver.book.planned import keep_week
from setwright.solver.desk.application import application
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.access import Access
from setwright.solver.desk.entry.guard import MOST_BYTES, POLICY, TOKEN


def test_nobody_is_let_in_without_the_token(outsider: TestClient) -> None:
    for address in ("/", "/clients/M", "/searches/x", f"/?{TOKEN}=guess"):
        assert outsider.get(address).status_code == 403
    assert outsider.post("/clients", data={"code": "M"}, headers=ORIGIN).status_code == 403


def test_the_token_is_gone_from_the_address_once_it_let_a_browser_in(desk: Desk, outsider: TestClient) -> None:
    answer = outsider.get(f"/?{TOKEN}={desk.keys.token}")
    assert (answer.status_code, answer.headers["location"]) == (303, "/")
    cookie = answer.headers["set-cookie"]
    assert "HttpOnly" in cookie and "SameSite=strict" in cookie and desk.keys.token not in cookie
    assert outsider.get("/").status_code == 200


@pytest.mark.parametrize("host", ["attacker.example", "attacker.example:7000", "127.0.0.1:7001", "", "127.0.0.1"])
def test_a_name_that_was_bound_anew_to_this_machine_is_refused(browser: TestClient, host: str) -> None:
    assert browser.get("/", headers={"Host": host}).status_code == 421


@pytest.mark.parametrize("origin", ["https://attacker.example", f"https://{HOST}", "null", ""])
def test_a_post_from_another_site_does_nothing(browser: TestClient, origin: str) -> None:
    answer = browser.post("/clients", data={"code": "M", "phrase": "3 x 40"}, headers={"Origin": origin})
    assert answer.status_code == 403
    assert browser.get("/clients/M").status_code == 422


def test_a_post_that_does_not_say_where_it_comes_from_does_nothing(browser: TestClient) -> None:
    del browser.headers["Origin"]
    assert browser.post("/clients", data={"code": "M", "phrase": "3 x 40"}).status_code == 403


def test_every_answer_says_what_a_page_may_load(browser: TestClient, outsider: TestClient) -> None:
    for answer in (browser.get("/"), browser.get("/static/desk.js"), browser.get("/nowhere"), outsider.post("/")):
        assert answer.headers["content-security-policy"] == POLICY
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert answer.headers["cache-control"] == "no-store"
        assert answer.headers["referrer-policy"] == "same-origin", "else a plain form's origin is sent as null"
    assert "unsafe" not in POLICY


def test_a_body_that_is_too_large_is_not_read(browser: TestClient) -> None:
    answer = browser.post("/clients", content=b"x" * (MOST_BYTES + 1))
    assert answer.status_code == 413


@pytest.mark.parametrize(
    ("host", "port", "said", "origin"),
    [
        ("::1", 7348, "[::1]:7348", "https://[::1]:7348"),
        ("2001:db8:0:0:0:0:0:7", 7348, "[2001:db8::7]:7348", "https://[2001:db8::7]:7348"),
        ("192.0.2.7", 443, "192.0.2.7", "https://192.0.2.7"),
        ("Desk.Example", 443, "desk.example", "https://desk.example"),
        ("::1", 443, "[::1]", "https://[::1]"),
    ],
)
def test_hosts_are_known_as_browsers_write_them(desk: Desk, host: str, port: int, said: str, origin: str) -> None:
    """RFC 3986, 3.2.2: an IPv6 address stands in brackets; the URL standard, 4.5: the usual port is left away."""
    access = Access(host, Path("desk.pem"), Path("key.pem"))
    desk.keys.secure = True
    assert access.address(port).startswith(f"{origin.removesuffix(f':{port}')}:{port}/")
    with TestClient(application(desk, access.hosts(port)), follow_redirects=False) as outside:
        headers = {"Host": said, "Origin": origin}
        assert outside.get(f"/?{TOKEN}={desk.keys.token}", headers=headers).status_code == 303
        assert outside.post("/enter", data={"said": "x"}, headers=headers).status_code == 422
        assert outside.post("/enter", data={}, headers={**headers, "Origin": "https://192.0.2.8"}).status_code == 403
        assert outside.get("/enter", headers={**headers, "Host": "192.0.2.8"}).status_code == 421


@pytest.mark.parametrize("code", ["Zoë", "Жанна"])
def test_a_code_beyond_plain_latin_letters_is_gone_to(browser: TestClient, desk: Desk, code: str) -> None:
    answer = browser.post("/clients", data={"code": code, "phrase": PHRASE}, headers={"HX-Request": "true"})
    assert (answer.status_code, answer.headers["hx-redirect"]) == (204, f"/clients/{quote(code)}")
    assert browser.get(answer.headers["hx-redirect"]).status_code == 200
    assert browser.get(f"/clients/{code}/export").status_code == 200
    page = browser.get(f"/clients/{code}/brief").text
    assert f'<a href="/clients/{code}/brief" aria-current="page">' in page
    shown = {"page": f"/clients/{quote(code)}/brief"}
    with desk.book() as book:
        keep_week(book, client_of(book, code), date(2026, 11, 30), {})
    assert browser.post(f"/clients/{code}/back", data=shown, headers=JSON).json()["address"] == f"/clients/{code}/brief"


def test_a_stranger_is_told_what_to_do(outsider: TestClient) -> None:
    for headers in ({}, {"HX-Request": "true"}):
        assert "setwright desk" in outsider.get("/", headers=headers).text


def test_a_refusal_says_what_to_do_next(client_m: TestClient) -> None:
    asked = {"Referer": f"http://{HOST}/clients/M?x=1"}
    acted = client_m.post("/clients/M/rest", data={"since": "soon"}, headers=asked).text
    assert "Nothing was changed" in acted and "Back button" in acted and 'href="/clients/M?x=1"' in acted
    shown = client_m.get("/clients/M/weeks/soon", headers={"Referer": "http://elsewhere.example/x"}).text
    assert "This cannot be shown" in shown and "Back button" not in shown and "elsewhere" not in shown
