"""A week changed line by line: the good way, what is refused, what stands though a wish is missed."""

from __future__ import annotations

from typing import Any

import pytest
from at_desk import JSON
from kept_week import HERE, MONDAY, act, keep_week_of_p, lines_on
from starlette.testclient import TestClient

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.book.planned import kept_weeks
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.weeks import line

SQUAT = "thu:heel-raised-goblet-squat"


@pytest.fixture
def browser_p(desk: Desk, browser: TestClient) -> TestClient:
    keep_week_of_p(desk.place)
    return browser


def week(browser: TestClient) -> dict[str, Any]:
    found: dict[str, Any] = browser.get(HERE, headers=JSON).json()
    return found


def reasons(desk: Desk) -> list[str]:
    with desk.book() as book:
        return [kept.why for kept in kept_weeks(book, client_of(book, "P"))]


def newest_brief(desk: Desk) -> dict[str, Any]:
    with desk.book() as book:
        return brief_of(book, client_of(book, "P"))


def test_a_set_less_is_kept_at_once_with_its_reason(desk: Desk, browser_p: TestClient) -> None:
    before = week(browser_p)
    after = act(browser_p, SQUAT, "sets", "3", **JSON).json()
    said = "Heel-raised goblet squat at 3 sets instead of 4 on Thursday"
    assert lines_on(after, 1)["heel-raised-goblet-squat"]["sets"] == 3
    assert after["days"][1]["seconds"] < before["days"][1]["seconds"]
    assert after["edit"]["said"] == said and any("Week index" in text for text in after["edit"]["sentences"])
    assert reasons(desk) == ["found on the desk", said]
    assert week(browser_p)["days"] == after["days"]


def test_partners_keep_in_step(browser_p: TestClient) -> None:
    lines = lines_on(act(browser_p, "mon:dumbbell-side-raise", "sets", "2", **JSON).json(), 0)
    assert lines["dumbbell-side-raise"]["sets"] == lines["dumbbell-calf-raise"]["sets"] == 2


def test_a_swap_stands_in_the_lines_place(browser_p: TestClient) -> None:
    choices = browser_p.get(f"{HERE}/line?entry=mon:dumbbell-curl", headers=JSON).json()
    first = choices["swaps"][0]
    after = act(browser_p, "mon:dumbbell-curl", "swap", first["exercise"], **JSON).json()
    assert first["exercise"] in lines_on(after, 0) and "dumbbell-curl" not in lines_on(after, 0)
    assert after["edit"]["said"].startswith(first["name"] + " in the place of Dumbbell curl on Monday")
    assert after["stimulus"] == pytest.approx(week(browser_p)["stimulus"])


def test_a_line_goes_to_another_day_and_leaves_its_partner(browser_p: TestClient) -> None:
    after = act(browser_p, "thu:dumbbell-overhead-extension", "move", "mon", **JSON).json()
    moved = lines_on(after, 0)["dumbbell-overhead-extension"]
    assert moved["paired_with"] is None and moved["rest_seconds"] > 0
    assert lines_on(after, 1)["bent-over-dumbbell-rear-raise"]["paired_with"] is None
    assert after["edit"]["said"] == "Dumbbell overhead extension moved from Thursday to Monday"


def test_two_partners_go_to_another_day_together(browser_p: TestClient) -> None:
    faults = act(browser_p, "thu:dumbbell-overhead-extension", "move", "mon+", **JSON).json()["faults"]
    assert any("8 exercises" in fault["said"] for fault in faults)
    act(browser_p, "mon:dumbbell-side-raise", "out")
    after = act(browser_p, "thu:dumbbell-overhead-extension", "move", "mon+", **JSON).json()
    lines = lines_on(after, 0)
    assert lines["dumbbell-overhead-extension"]["paired_with"] == "bent-over-dumbbell-rear-raise"
    assert lines["bent-over-dumbbell-rear-raise"]["paired_with"] == "dumbbell-overhead-extension"


def test_a_line_is_taken_out(browser_p: TestClient) -> None:
    assert SQUAT.split(":")[1] not in lines_on(act(browser_p, SQUAT, "out", **JSON).json(), 1)


def test_closing_a_lift_changes_the_brief_too_and_keeps_its_health_notes(desk: Desk, browser_p: TestClient) -> None:
    cautions = newest_brief(desk)["client"]["cautions"]
    act(browser_p, SQUAT, "close")
    brief = newest_brief(desk)
    assert brief["avoid"][-1] == "heel-raised-goblet-squat" and brief["client"]["cautions"] == cautions != []


def test_a_pin_is_for_the_weeks_to_come_and_can_be_dropped(desk: Desk, browser_p: TestClient) -> None:
    after = act(browser_p, SQUAT, "pin", "day", **JSON).json()
    assert after["edit"]["sentences"] == ["The week is the same; the brief is not."]
    assert [(pin["exercise"], pin["day"]) for pin in newest_brief(desk)["pins"]] == [
        ("heel-raised-goblet-squat", "thu")
    ]
    assert "Pin it no longer" in browser_p.get(f"{HERE}/line?entry={SQUAT}").text
    act(browser_p, SQUAT, "unpin")
    assert newest_brief(desk)["pins"] == []


def test_a_pin_whose_week_cannot_be_kept_leaves_the_brief_as_it_was(
    desk: Desk, browser_p: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Brief and week are one act: before, a full disk between them left a pin of which no week knew."""

    def full(*rest: object) -> None:
        raise SetwrightError(Fault("book", "the disk is full"))

    monkeypatch.setattr(line, "keep_week", full)
    assert act(browser_p, SQUAT, "pin", "day", **JSON).status_code == 422
    assert newest_brief(desk).get("pins", []) == []


def test_a_change_that_misses_a_wish_stands_and_says_so(browser_p: TestClient) -> None:
    act(browser_p, SQUAT, "pin")
    after = act(browser_p, SQUAT, "out", **JSON).json()
    assert len(after["edit"]["misses"]) == 1 and "Heel-raised goblet squat" in after["edit"]["misses"][0]
    assert [one["id"] for one in after["broken"]] == ["pinned"]
    assert "This week breaks" in browser_p.get(HERE).text


def test_a_change_that_breaks_a_rule_is_refused_and_changes_nothing(desk: Desk, browser_p: TestClient) -> None:
    answer = act(browser_p, SQUAT, "sets", "5", **{"HX-Request": "true"})
    assert answer.status_code == 422 and "set-range" in answer.text and "Make it fit" in answer.text
    faults = act(browser_p, SQUAT, "sets", "5", **JSON).json()["faults"]
    assert all(fault["remedy"] for fault in faults)
    assert reasons(desk) == ["found on the desk"]


@pytest.mark.parametrize(
    ("entry", "name", "value", "where"),
    [
        ("mon:Z", "out", "", "entry"),
        (SQUAT, "fly", "", "act"),
        (SQUAT, "sets", "0", "sets"),
        (SQUAT, "sets", "many", "sets"),
        (SQUAT, "sets", "²", "sets"),
        (SQUAT, "swap", "no such lift", "exercises"),
        (SQUAT, "swap", "barbell-back-squat", "thu:B"),
        (SQUAT, "move", "sun", "day"),
        ("mon:dumbbell-curl", "swap", "dumbbell-side-raise", "mon:B2"),
    ],
)
def test_what_cannot_be_done_is_refused_with_its_place(
    browser_p: TestClient, entry: str, name: str, value: str, where: str
) -> None:
    answer = act(browser_p, entry, name, value, **JSON)
    assert answer.status_code == 422 and answer.json()["faults"][0]["where"] == where


def test_without_script_an_act_leads_back_to_the_week(browser_p: TestClient) -> None:
    answer = act(browser_p, SQUAT, "sets", "3")
    assert (answer.status_code, answer.headers["location"]) == (303, HERE)
    assert "<html" in browser_p.get(f"{HERE}/line?entry={SQUAT}").text
    assert "<html" not in browser_p.get(f"{HERE}/line?entry={SQUAT}", headers={"HX-Request": "true"}).text
    assert "Nothing was changed" in act(browser_p, SQUAT, "sets", "5").text


def test_the_keyboard_goes_on_from_the_line_that_was_changed(browser_p: TestClient) -> None:
    text = act(browser_p, SQUAT, "out", **{"HX-Request": "true"}).text
    assert '<h2 id="day-2" tabindex="-1" autofocus>' in text
    swapped = act(browser_p, "mon:dumbbell-curl", "swap", "dumbbell hammer curl", **{"HX-Request": "true"}).text
    assert 'id="change-mon-dumbbell-hammer-curl" role="button" autofocus' in swapped


def test_sets_are_solved_anew_around_a_change(desk: Desk, browser_p: TestClient) -> None:
    data = {"entry": SQUAT, "act": "sets", "value": "3", "settle": "yes"}
    address = browser_p.post(f"{HERE}/line", data=data, headers=JSON).json()["address"]
    task = desk.crew.search(address.rsplit("/", 1)[-1]).task  # type: ignore[union-attr]
    from setwright.solver.desk.weeks.settle import settle

    found = settle(task.arguments, desk.catalogue, None)  # type: ignore[arg-type]
    assert lines_on(dict(found), 1)["heel-raised-goblet-squat"]["sets"] == 3
    assert "cautions" not in found["brief"]["client"] and task.arguments["starts"] == str(MONDAY)
