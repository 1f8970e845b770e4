"""A session in the gym: filled in with its targets, taken once however often it is sent, never lost to another."""

from __future__ import annotations

import re
from datetime import date, timedelta

import pytest
from at_desk import JSON
from block_in_book import block_in_book
from starlette.testclient import TestClient

from setwright.solver.book.clients import client_of
from setwright.solver.book.sessions import sessions_of
from setwright.solver.desk.desk import Desk
from setwright.solver.log.values import LoggedSession

MONDAY = "/clients/M/log/2026-01-05"


@pytest.fixture
def gym(browser: TestClient, desk: Desk) -> TestClient:
    block_in_book(desk)
    return browser


def sessions(desk: Desk) -> tuple[LoggedSession, ...]:
    with desk.book() as book:
        return sessions_of(book, client_of(book, "M"))


def sent(*reps: str, key: str = "a", **more: str) -> dict[str, str]:
    """What a phone sends of the bench press: so many sets of 60 kg, marked as done."""
    fields = {"id": key, "unit": "kg", "session": "1", "lift-0": "barbell-bench-press", **more}
    for number, count in enumerate(reps, 1):
        at = f"0-{number}"
        fields |= {f"load-{at}": "60", f"reps-{at}": count, f"left-{at}": "2", f"done-{at}": "on"}
    return fields


def test_the_session_of_the_day_is_filled_in_with_its_targets(gym: TestClient) -> None:
    gym.post("/clients/M/log/add", data={"sets": "bench press 60x8,8,7 @ 2 RIR", "on": "2026-01-05"})
    page = gym.get("/clients/M/log/2026-01-12").text
    assert 'name="load-0-1" inputmode="decimal" value="60"' in page
    assert 'name="reps-0-1" inputmode="numeric" value="9"' in page
    assert (
        'name="done-0-3"' in page
        and "Chest-supported dumbbell row" in page
        and "Seated leg curl" not in page.split("<datalist")[0]
    )
    thursday = gym.get("/clients/M/log/2026-01-12?session=2").text.split("<datalist")[0]
    assert "Seated leg curl" in thursday
    document = gym.get("/clients/M/log/2026-01-12", headers=JSON).json()
    assert [line["day"] for line in document["lines"]] == [1, 1]
    assert gym.get("/clients/M/log/2026-01-12?session=9").status_code == 422
    assert gym.get("/clients/M/log/never").status_code == 422


def test_a_day_for_which_nothing_is_planned_is_written_down_too(gym: TestClient) -> None:
    page = gym.get("/clients/M/log/2025-06-02")
    assert "Nothing is planned" in page.text and 'name="lift-0"' in page.text
    today = gym.get("/clients/M/log/today")
    assert (today.status_code, today.headers["location"]) == (303, f"/clients/M/log/{date.today()}")
    assert gym.get("/clients/M/log/today", headers=JSON).json()["on"] == str(date.today())


def test_a_session_that_is_sent_twice_is_in_the_book_once(gym: TestClient, desk: Desk) -> None:
    first = gym.post(MONDAY, data=sent("8", "8", minutes="40", hard="7"), headers=JSON).json()
    again = gym.post(MONDAY, data=sent("8", "8", minutes="40", hard="7"), headers=JSON).json()
    other = gym.post(MONDAY, data=sent("8", "8", key="b", minutes="40", hard="7"), headers=JSON).json()
    assert [answer["written"] for answer in (first, again, other)] == [1, 0, 0]
    assert {answer["state"] for answer in (first, again, other)} == {"taken"}
    (session,) = sessions(desk)
    assert (session.minutes, session.how_hard, session.session) == (40, 7, 1)
    assert [(s.load, s.reps, s.rir) for s in session.sets] == [(60.0, 8, 2), (60.0, 8, 2)]


def test_what_was_sent_is_not_written_again_after_it_was_corrected(gym: TestClient, desk: Desk) -> None:
    gym.post(MONDAY, data=sent("8", "8"), headers=JSON)
    gym.post(MONDAY, data=sent("7", "7", key="b", how="replace"), headers=JSON)
    late = gym.post(MONDAY, data=sent("8", "8"), headers=JSON)
    assert (late.status_code, late.json()["written"]) == (200, 0)
    assert [s.reps for s in sessions(desk)[0].sets] == [7, 7]


def test_another_session_at_the_same_place_is_asked_about(gym: TestClient, desk: Desk) -> None:
    gym.post("/clients/M/log/add", data={"sets": "bench press 60x8,8", "on": "2026-01-05"})
    answer = gym.post(MONDAY, data=sent("5"), headers=JSON)
    document = answer.json()
    assert (answer.status_code, document["state"]) == (409, "conflict")
    assert "1 lift, 2 sets" in document["said"] and len(document["standing"]["sets"]) == 2
    page = gym.post(MONDAY, data=sent("5"))
    assert (
        page.status_code == 409 and "Add the typed sets to it" in page.text and 'name="reps-0-1" value="5"' in page.text
    )
    assert len(sessions(desk)[0].sets) == 2
    gym.post(MONDAY, data=sent("5", how="add"), headers=JSON)
    assert [(s.number, s.reps) for s in sessions(desk)[0].sets] == [(1, 8), (2, 8), (3, 5)]
    gym.post(MONDAY, data=sent("4", key="c", how="replace"), headers=JSON)
    assert [s.reps for s in sessions(desk)[0].sets] == [4] and len(sessions(desk)) == 1


def test_without_a_script_the_form_is_taken_as_well(gym: TestClient, desk: Desk) -> None:
    key = re.search(r'name="id" value="([^"]+)"', gym.get(MONDAY).text)
    assert key
    answer = gym.post(MONDAY, data=sent("8", key=key[1]))
    assert (answer.status_code, answer.headers["location"]) == (303, "/clients/M/log")
    assert len(sessions(desk)) == 1


def test_an_added_hold_is_counted_in_breaths_and_sets_stand_in_the_order_of_their_ends(
    gym: TestClient, desk: Desk
) -> None:
    fields = sent("8", **{"lift-9": "Plank", "reps-9-1": "45", "done-9-1": "on", "started": "18:00"})
    fields |= {"ended-0-1": "2026-01-05T18:20:05", "ended-9-1": "2026-01-05T18:10:00", "note": "two  words"}
    gym.post(MONDAY, data=fields, headers=JSON)
    (session,) = sessions(desk)
    assert [(s.exercise, s.reps) for s in session.sets] == [("plank", 15), ("barbell-bench-press", 8)]
    assert (session.note, session.started and session.started.hour) == ("two words", 18)
    anew = gym.get("/clients/M/log/2026-01-05?anew=1&session=1").text
    assert 'name="reps-0-1" inputmode="numeric" value="45"' in anew and 'name="how" value="replace"' in anew


def test_all_that_is_amiss_is_said_and_nothing_is_written(gym: TestClient, desk: Desk) -> None:
    wrong = sent("many", "8", minutes="-3", unit="lb") | {"load-0-2": "heavy", "done-4-1": "on"}
    faults = gym.post(MONDAY, data=wrong, headers=JSON).json()["faults"]
    places = [fault["where"] for fault in faults]
    assert places == [
        "minutes",
        "loads",
        "Barbell bench press, set 1",
        "Barbell bench press, set 2",
        "lift 5",
        "lift 5, set 1",
    ]
    later = f"/clients/M/log/{date.today() + timedelta(days=2)}"
    assert "in the future" in gym.post(later, data=sent("8"), headers=JSON).json()["faults"][0]["said"]
    none = gym.post(MONDAY, data=sent(), headers=JSON).json()["faults"]
    assert none[0]["said"] == "none is marked as done"
    assert gym.post(MONDAY, data=sent("8", key=""), headers=JSON).status_code == 422
    assert gym.post(MONDAY, data=sent("8", how="twice"), headers=JSON).status_code == 422
    assert sessions(desk) == ()


def test_no_health_note_stands_on_the_page_whose_fields_a_browser_keeps(gym: TestClient) -> None:
    assert "41" not in re.findall(r'value="([^"]*)"', gym.get(MONDAY).text)


def draft(page: str) -> str:
    (found,) = re.findall(r'data-draft="([^"]+)"', page)
    return str(found)


def test_what_is_typed_is_kept_under_its_client_week_and_session(gym: TestClient, desk: Desk) -> None:
    gym.post("/clients/M/log/add", data={"sets": "bench press 60x8", "on": "2026-01-08", "session": "1"})
    pages = [f"{MONDAY}?session=1", f"{MONDAY}?session=2", "/clients/M/log/2026-01-08?anew=1&session=1"]
    pages += ["/clients/M/log/2026-01-12", "/clients/M/log/2026-01-08?session=1"]
    names = [draft(gym.get(page).text) for page in pages]
    assert len(set(names)) == len(names)
    with desk.book() as book:
        added = client_of(book, "M").added
    assert names[0] == f"@M, {added}, week of 2026-01-05, session 1, 2026-01-05" == draft(gym.get(MONDAY).text)
    assert f'data-page="{MONDAY}?session=2"' in gym.get(f"{MONDAY}?session=2").text


def test_a_session_that_a_browser_kept_for_another_client_of_the_code_is_not_taken(gym: TestClient, desk: Desk) -> None:
    of = re.search(r'name="of" value="([^"]+)"', gym.get(MONDAY).text)
    assert of and of[1].startswith("@M, ")
    other = gym.post(MONDAY, data=sent("8", of="@M, 2020-01-01T00:00:00Z"), headers=JSON)
    assert other.status_code == 422 and "another @M" in other.json()["faults"][0]["said"]
    assert sessions(desk) == ()
    assert gym.post(MONDAY, data=sent("8", of=of[1]), headers=JSON).json()["written"] == 1


def test_the_service_worker_reaches_no_further_than_the_gym_pages_of_a_client(gym: TestClient) -> None:
    answer = gym.get("/clients/M/log/keeper.js")
    assert answer.headers["content-type"].startswith("text/javascript")
    assert "service-worker-allowed" not in answer.headers, "its scope is its own folder, /clients/M/log/"
    assert 'addEventListener("fetch"' in answer.text


def test_a_number_in_the_address_that_is_none_is_refused(client_m: TestClient) -> None:
    for number in ("9" * 5000, "0", "x"):
        assert client_m.get(f"/clients/M/log/2026-01-05?session={number}").status_code == 422


def test_a_day_at_the_end_of_the_calendar_is_refused(client_m: TestClient) -> None:
    for address, data in (("block/plan", {"weeks": "4", "starts": "9999-12-27"}), ("season", {"start": "9999-12-27"})):
        assert client_m.post(f"/clients/M/{address}", data=data, headers=JSON).status_code == 422
