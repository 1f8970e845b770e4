"""A week found on the desk: kept, or a clash freed by a concession, or alternatives to choose from."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from typing import Any

import pytest
from at_desk import HOST, JSON, ORIGIN, PHRASE, ended
from starlette.testclient import TestClient

from setwright.catalogue.load import load_catalogue
from setwright.solver.book.clients import brief_of, client_of, keep_brief
from setwright.solver.book.planned import kept_weeks
from setwright.solver.desk.application import application, stop_unwatched
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.guard import TOKEN, Keys
from setwright.solver.desk.searches.crew import Crew
from setwright.solver.desk.searches.search import Search
from setwright.solver.desk.searches.task import Task, Told
from setwright.solver.desk.weeks.find_week import find_week
from setwright.solver.log.mondays import coming_monday

MONDAY = "2026-11-30"


class Silent:
    """A task's listener that hears nothing."""

    def due(self) -> bool:
        return True

    def progress(self, **what: Any) -> None:
        """Let it go."""

    def stopped(self) -> bool:
        return False


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    return Desk(tmp_path_factory.mktemp("desk") / "book.db", load_catalogue(), Crew(1), Keys())


@pytest.fixture(scope="module")
def browser(desk: Desk) -> Iterator[TestClient]:
    app = application(desk, frozenset({HOST}))
    with TestClient(app, base_url=f"http://{HOST}", follow_redirects=False) as client:
        client.get(f"/?{TOKEN}={desk.keys.token}")
        client.headers.update(ORIGIN)
        client.post("/clients", data={"code": "M", "phrase": PHRASE})
        client.post("/clients", data={"code": "O", "phrase": PHRASE})
        yield client


@pytest.fixture(scope="module")
def found(browser: TestClient) -> str:
    """The address of the one search that these tests share, ended."""
    address: str = browser.post("/clients/M/find", data={"search": "quick"}, headers=JSON).json()["address"]
    assert ended(browser, address)["state"] == "done"
    return address


def key(address: str) -> str:
    return address.rsplit("/", 1)[-1]


def test_a_found_week_says_what_it_is_worth_and_what_it_gives_up(browser: TestClient, found: str) -> None:
    text = browser.get(found).text
    assert "points better can be found" in text and "interval" in text
    assert "Given up" in text and "Assumed" in text and "Search again" in text
    assert f'value="{coming_monday(date.today())}"' in text
    standing = browser.get(found, headers=JSON).json()
    assert standing["document"]["schema"] == "setwright.week/1" and standing["about"] == {"search": "quick"}


def test_the_better_weeks_are_told_as_they_come(browser: TestClient, found: str) -> None:
    with browser.stream("GET", f"{found}/news") as answer:
        assert next(answer.iter_lines()) == "event: end"


def test_a_week_is_kept_from_the_monday_of_a_day(desk: Desk, browser: TestClient, found: str) -> None:
    answer = browser.post("/clients/M/keep", data={"found": key(found), "starts": "2026-12-02"}, headers=JSON)
    assert answer.json()["address"] == f"/clients/M/weeks/{MONDAY}"
    with desk.book() as book:
        kept = kept_weeks(book, client_of(book, "M"))[-1]
    assert (str(kept.starts), kept.why) == (MONDAY, "found on the desk")
    assert kept.document["made_by"]["limits"]["search"] == "quick"


@pytest.mark.parametrize(
    ("code", "data", "said"),
    [
        ("M", {"found": "nothing"}, "forgotten"),
        ("M", {"starts": "tomorrow"}, "YYYY-MM-DD"),
        ("M", {"rank": "7"}, "rank"),
        ("O", {}, "not for @O"),
    ],
)
def test_what_cannot_be_kept_is_refused(
    browser: TestClient, found: str, code: str, data: dict[str, str], said: str
) -> None:
    answer = browser.post(f"/clients/{code}/keep", data={"found": key(found), **data}, headers=JSON)
    assert answer.status_code == 422 and said in answer.text


def test_an_alternative_is_kept_as_a_week_of_its_own(desk: Desk, browser: TestClient, found: str) -> None:
    document = dict(browser.get(found, headers=JSON).json()["document"])
    other = [{**line, "sets": line["sets"]} for line in document["days"][0]["entries"][:-1]]
    days = [{**document["days"][0], "entries": other}]
    search = put(
        desk, "others", {**document, "alternatives": [{"rank": 1, "days": days, "words": ["cheaper"]}]}, count=1
    )
    assert "cheaper." in browser.get(f"/searches/{search}").text
    answer = browser.post("/clients/M/keep", data={"found": search, "rank": "1", "starts": MONDAY}, headers=JSON)
    kept = browser.get(answer.json()["address"], headers=JSON).json()
    assert len(kept["days"][0]["entries"]) == len(other) and kept["stimulus"] < document["stimulus"]
    assert "alternatives" not in kept


def test_a_week_of_a_search_stopped_by_force_is_made_whole_when_it_is_kept(
    desk: Desk, browser: TestClient, found: str
) -> None:
    from setwright.solver.sheets.document.changed_week import NO_SEARCH

    document = dict(browser.get(found, headers=JSON).json()["document"])
    days = [{**d, "entries": [{**line, "swaps": []} for line in d["entries"]]} for d in document["days"]]
    hasty = {**document, "days": days, "made_by": {**document["made_by"], "limits": NO_SEARCH}}
    search = put(desk, "week", hasty, "stopped")
    assert "the search was stopped" in browser.get(f"/searches/{search}").text
    browser.post("/clients/M/keep", data={"found": search, "starts": MONDAY})
    kept = browser.get(f"/clients/M/weeks/{MONDAY}", headers=JSON).json()
    assert any(line["swaps"] for line in kept["days"][0]["entries"])


def test_a_search_that_ran_out_of_time_says_what_to_do(desk: Desk, browser: TestClient) -> None:
    fault = {"where": "search", "said": "no week was found (time limit)", "remedy": "try again"}
    for state, told in (("failed", (fault,)), ("stopped", ())):
        search = put(desk, "week", None, state, told)
        text = browser.get(f"/searches/{search}").text
        assert "Search harder, or ask for less" in text and "/clients/M/brief" in text


def put(desk: Desk, task: str, document: Any, state: Any = "done", faults: Any = (), **arguments: Any) -> str:
    """A search of client M that has ended so, as if it had been run."""
    told = Told(state, document=document, faults=faults)
    search = Search(f"s{len(desk.crew._searches)}", "M", Task(task, {"search": "quick", **arguments}), told)
    desk.crew._searches[search.id] = search
    return search.id


# ---- a clash


@pytest.fixture(scope="module")
def clash(desk: Desk, browser: TestClient) -> str:
    """A search that ended in a clash of a client with a caution."""
    with desk.book() as book:
        client = client_of(book, "M")
        raw = brief_of(book, client)
        raw = {**raw, "muscles": {"chest": {"at_least": 14.0}}}
        raw = {**raw, "client": {**raw["client"], "cautions": [{"tag": "wrist", "said_by": "", "on": None}]}}
        keep_brief(book, client, raw, "more chest")
        asked = brief_of(book, client_of(book, "M"))
    document = find_week({"brief": asked, "search": "quick"}, desk.catalogue, Silent())
    return put(desk, "week", document, brief=asked)


def test_a_clash_is_said_in_words_with_a_button_for_each_concession(browser: TestClient, clash: str) -> None:
    text = browser.get(f"/searches/{clash}").text
    assert "No week can meet this brief" in text and "Asked for: at least 14 sets of chest." in text
    document = browser.get(f"/searches/{clash}", headers=JSON).json()["document"]
    assert document["concessions"] and text.count('action="/clients/M/concede"') == len(document["concessions"])
    assert all("cautions" not in one["brief"]["client"] for one in document["concessions"])


def test_a_concession_changes_the_brief_and_searches_again(desk: Desk, browser: TestClient, clash: str) -> None:
    concessions = browser.get(f"/searches/{clash}", headers=JSON).json()["document"]["concessions"]
    for data, said in (({"rank": "99"}, "rank"), ({"rank": "1", "search": "hasty"}, "hasty")):
        answer = browser.post("/clients/M/concede", data={"found": clash, **data}, headers=JSON)
        assert answer.status_code == 422 and said in answer.text
    rank = next(one["rank"] for one in concessions if one["kind"] == "sets")
    answer = browser.post("/clients/M/concede", data={"found": clash, "rank": rank, "search": "quick"}, headers=JSON)
    begun = desk.crew.search(key(answer.json()["address"]))
    assert begun is not None
    desk.crew.stop(begun)
    brief = begun.task.arguments["brief"]
    assert brief["muscles"]["chest"]["at_least"] < 14 and brief["client"]["cautions"][0]["tag"] == "wrist"
    with desk.book() as book:
        assert brief_of(book, client_of(book, "M")) == brief
    again = browser.post("/clients/M/concede", data={"found": clash, "rank": rank}, headers=JSON)
    assert again.status_code == 422 and "the brief was changed since" in again.text


def test_a_search_goes_on_while_a_window_out_of_sight_waits_for_it_and_not_a_moment_longer(
    browser: TestClient, desk: Desk
) -> None:
    search = Search("away", "M", Task("week", {}), Told("running", count=1))
    desk.crew._searches[search.id] = search
    assert browser.post(f"/searches/{search.id}/waited").status_code == 204
    stop_unwatched(desk, -1)
    assert not search.stopping
    desk._waited[search.id] = 0.0
    stop_unwatched(desk, -1)
    assert search.stopping
    search.told = Told("stopped", count=2)
    assert browser.post("/searches/none/waited").status_code == 422
