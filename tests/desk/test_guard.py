"""Who may ask the desk, and what it sends with each answer."""

from __future__ import annotations

import pytest
from at_desk import HOST, ORIGIN
from starlette.testclient import TestClient

from setwright.solver.desk.desk import Desk
from setwright.solver.desk.guard import MOST_BYTES, POLICY, TOKEN


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
