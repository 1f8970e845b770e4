"""Two windows on one client: each is told of the other's change, and nothing is written over unseen."""

from __future__ import annotations

import re
from datetime import date

from at_desk import JSON
from starlette.testclient import TestClient

from setwright.solver.book.clients import client_of, rest
from setwright.solver.book.opened import open_book
from setwright.solver.book.planned import keep_week, kept_weeks
from setwright.solver.desk.application import application
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.pages import DATA

MONDAY = date(2026, 11, 30)
PAGE = "/clients/M"


def stamp(page: str) -> str:
    """The stamp that the forms of a page carry, which is the same in each."""
    (found,) = set(re.findall(r'name="stamp" value="([^"]+)"', page))
    return found


def by_command(desk: Desk, why: str = "found on the desk") -> None:
    """A week kept by another process."""
    with open_book(desk.place, through="a command") as book:
        keep_week(book, client_of(book, "M"), MONDAY, {"n": 1}, why)


def weeks(desk: Desk) -> int:
    with desk.book() as book:
        return len(kept_weeks(book, client_of(book, "M")))


def test_what_was_done_last_is_taken_back_and_done_again(client_m: TestClient, desk: Desk) -> None:
    by_command(desk)
    page = client_m.get(PAGE).text
    assert "Take back: week of 30 Nov 2026, found on the desk" in page and "Do again" not in page
    answer = client_m.post(f"{PAGE}/back", data={"stamp": stamp(page), "page": f"{PAGE}/brief"})
    assert (answer.status_code, answer.headers["location"], weeks(desk)) == (303, f"{PAGE}/brief", 0)
    page = client_m.get(PAGE).text
    assert "Take back" not in page and "Do again: week of 30 Nov 2026" in page
    answer = client_m.post(f"{PAGE}/again", data={"stamp": stamp(page), "page": f"{PAGE}/weeks/2026-11-30"})
    assert (answer.headers["location"], weeks(desk)) == (f"{PAGE}/weeks/2026-11-30", 1)
    gone = client_m.post(f"{PAGE}/back", data={"page": f"{PAGE}/weeks/2026-11-30"})
    assert (gone.headers["location"], weeks(desk)) == (PAGE, 0), "a week that is planned no longer has no page"
    client_m.post(f"{PAGE}/again")
    assert client_m.post(f"{PAGE}/again", headers=JSON).status_code == 422
    assert client_m.post(f"{PAGE}/back", headers=JSON).json() == {"address": PAGE}


def test_a_page_is_sent_back_to_only_within_its_client(client_m: TestClient, desk: Desk) -> None:
    by_command(desk)
    answer = client_m.post(f"{PAGE}/back", data={"page": "https://attacker.example/"})
    assert answer.headers["location"] == PAGE


def test_an_act_on_a_client_who_was_changed_since_is_a_conflict_until_it_is_sent_all_the_same(
    client_m: TestClient, desk: Desk
) -> None:
    by_command(desk)
    mine = {"stamp": stamp(client_m.get(PAGE).text), "page": PAGE}
    by_command(desk, "Thursday missed")
    answer = client_m.post(f"{PAGE}/back", data=mine)
    assert (answer.status_code, weeks(desk)) == (409, 2)
    assert "week of 30 Nov 2026, Thursday missed" in answer.text and "by a command" in answer.text
    assert 'name="page" value="/clients/M"' in answer.text, "what was sent is ready to be sent again"
    part = client_m.post(f"{PAGE}/back", data=mine, headers={"HX-Request": "true"})
    assert part.status_code == 409 and "<html" not in part.text and "Write mine all the same" in part.text
    document = client_m.post(f"{PAGE}/back", data=mine, headers=JSON).json()
    assert [one["said"] for one in document["since"]] == ["week of 30 Nov 2026, Thursday missed"]
    assert document["stamp"] == stamp(part.text)
    assert client_m.post(f"{PAGE}/back", data={**mine, "stamp": document["stamp"]}).status_code == 303
    assert weeks(desk) == 1


def test_what_a_form_held_comes_back_as_text(client_m: TestClient, desk: Desk) -> None:
    mine = {"stamp": stamp_of_form(client_m), "name": '"><script>alert(1)</script>'}
    by_command(desk)
    answer = client_m.post(f"{PAGE}/name", data=mine)
    assert answer.status_code == 409 and "<script>alert" not in answer.text


def test_a_search_is_of_the_newest_brief_and_begins_whatever_was_changed_since(
    client_m: TestClient, desk: Desk
) -> None:
    """It writes nothing, so that nothing can be lost by it."""
    mine = {"stamp": stamp_of_form(client_m), "search": "quick"}
    by_command(desk)
    for act in ("find", "others", "compare", "minutes", "block/plan"):
        assert client_m.post(f"{PAGE}/{act}", data=mine, headers=JSON).status_code != 409, act


def stamp_of_form(client: TestClient) -> str:
    return stamp(client.get(PAGE).text)


def test_a_form_without_a_stamp_comes_from_a_program_and_a_wrong_one_is_told(client_m: TestClient, desk: Desk) -> None:
    by_command(desk)
    assert client_m.post(f"{PAGE}/back", data={"stamp": "x"}).status_code == 422
    assert client_m.post(f"{PAGE}/back").status_code == 303


def test_a_stamp_is_of_before_the_page_was_made(client_m: TestClient, desk: Desk) -> None:
    """A write that comes while a page is made must be a conflict for it: what it shows may be older."""
    house = client_m.app.state.house  # type: ignore[attr-defined]
    before = stamp_of_form(client_m)
    page_state = house.globals["page_state"]

    def late(request: object, code: str) -> object:
        by_command(desk)
        return page_state(request, code)

    house.globals["page_state"] = late
    assert stamp(client_m.get(PAGE).text) == before


def test_a_window_is_told_of_what_is_done_elsewhere(client_m: TestClient, desk: Desk) -> None:
    seen = stamp_of_form(client_m)
    with open_book(desk.place) as book:
        rest(book, client_of(book, "M"), MONDAY)
    by_command(desk)
    ended = iter((False, False, True))
    client_m.app.state.ending = lambda: next(ended, True)  # type: ignore[attr-defined]
    answer = client_m.get(f"{PAGE}/changes?since={seen}")
    assert answer.headers["content-type"].startswith("text/event-stream")
    assert answer.text.count("event: changed") == 1, "the same change is told once"
    assert "at rest since 2026-11-30" in answer.text and "week of 30 Nov 2026" in answer.text
    assert client_m.get("/clients/X/changes").status_code == 422
    assert client_m.get(f"{PAGE}/changes?since=x").status_code == 422


FREE = ("/check", "/find", "/others", "/compare", "/minutes", "/season", "/block/plan", "/ask", "/stop", "/run")
"""Acts that begin or end a search and write nothing; the log's own page of a day is sent by a phone that may have been
away for hours, and says itself what stands there."""
NO_CLIENT = (
    'action="/clients"',
    'action="/templates',
    'action="/phone',
    'action="/enter',
    'id="session"',
    "{{ path }}",
)


def test_every_form_that_acts_on_a_client_carries_the_stamp() -> None:
    for template in sorted(DATA.rglob("*.html")):
        for form in re.findall(r"<form\b[^>]*>.*?</form>", template.read_text(), re.DOTALL):
            head = form.partition("\n")[0]
            action = re.search(r'action="([^"?]*)', head)
            free = any(word in head for word in NO_CLIENT) or (action and action[1].endswith(FREE))
            if 'method="post"' in head and not free:
                carried = "stamp_field(request, " in form or 'name="stamp"' in form
                assert action and carried, f"{template.name}: {form[:120]}"


def test_a_desk_that_ends_ends_its_streams(desk: Desk) -> None:
    assert application(desk, frozenset({"h"})).state.ending() is False
