"""The brief page: a form and a phrase, each filled from the other; a new version; health notes here alone."""

from __future__ import annotations

import re
from html import unescape
from html.parser import HTMLParser

import pytest
from at_desk import JSON, PHRASE
from starlette.testclient import TestClient

from setwright.solver.book.clients import brief_of, changes, client_of
from setwright.solver.book.sessions import log_sessions
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.desk.brief.form_read import brief_of_form
from setwright.solver.desk.brief.form_values import form_values
from setwright.solver.desk.desk import Desk
from tests.book.conftest import session

PAGE = "/clients/M/brief"
HTMX = {"HX-Request": "true"}


class Form(HTMLParser):
    """The fields that a browser would send of a page's brief form."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.fields: dict[str, str] = {}
        self._select = self._text = ""
        self.feed(page[page.index('<form class="brief"') :])

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = {name: value or "" for name, value in attrs}
        name = found.get("name", "")
        if tag == "input" and name and (found.get("type") != "checkbox" or "checked" in found):
            self.fields[name] = found.get("value", "")
        elif tag == "textarea":
            self._text = name
            self.fields[name] = ""
        elif tag == "select":
            self._select = name
        elif tag == "option" and self._select and (self._select not in self.fields or "selected" in found):
            self.fields[self._select] = found["value"]

    def handle_data(self, data: str) -> None:
        if self._text:
            self.fields[self._text] += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "textarea":
            self._text = ""
        elif tag == "select":
            self._select = ""


def form(browser: TestClient) -> dict[str, str]:
    return Form(browser.get(PAGE).text).fields


def asked(desk: Desk) -> dict[str, object]:
    with desk.book() as book:
        return brief_of(book, client_of(book, "M"))


LONG = (
    "mon upper 60 min, thu lower 45 min, with dumbbells to 24 kg by 2 and bench, grow glutes at least 8 sets, "
    "no calves, avoid squats, avoid bench press, like cable column, dislike lunges, pin plank on mon 3 sets, "
    "must hinge, lb, advanced, efficiency, no pairs, bad knee, pregnant, 64 years old, sport football on tue, "
    "keep 95 %, warm up 5 min, alone, rule third-day off, single rack, with safeties"
)
MORE = {
    "title": "Autumn",
    "days": [
        {"minutes": 40, "weekday": "mon", "without": ["rack"]},
        {"minutes": 30, "weekday": "sat", "equipment": "bands"},
    ],
    "lifts": {
        "barbell-back-squat": {"load": 100.0, "reps": 5, "rir": 2},
        "barbell-bench-press": {"maximum": 90, "on": "2026-01-02"},
    },
    "owned": {"plates": [20, 10, 2.5], "bar": 15},
    "client": {
        "clearance": {"by": "a doctor", "on": "2026-01-02", "limits": "none"},
        "cautions": [{"tag": "hip", "said_by": "x"}],
    },
    "clock": {"ramp_lower": 60},
    "rules": {"third-day": 2.0},
    "dose": "lighter",
    "rir_more": 1,
}  # fmt: skip
ANY_ORDER = {"days": [{"minutes": 40}, {"minutes": 30, "focus": "upper"}], "any_order": True, "rest_days_between": 2}


@pytest.mark.parametrize("asked", [LONG.replace(" kg", " lb"), PHRASE, MORE, ANY_ORDER, "6 x 45 min, push pull legs"])
def test_a_form_says_the_brief_that_it_was_filled_from(desk: Desk, asked: object) -> None:
    catalogue = desk.catalogue
    raw = isinstance(asked, dict)
    brief = (parse_brief(asked, catalogue) if raw else parse_phrase(str(asked), catalogue)).brief  # type: ignore[arg-type]
    again = brief_of_form(form_values(brief, catalogue), brief, catalogue).brief
    for field in type(brief).model_fields:
        one, other = getattr(again, field), getattr(brief, field)
        assert (set(one) == set(other)) if field in ("avoid", "dislike") else one == other, field


def test_what_the_page_sends_unchanged_is_no_new_version(client_m: TestClient, desk: Desk) -> None:
    client_m.post("/clients", data={"code": "K", "phrase": LONG.replace(" kg", " lb")})
    page = client_m.get("/clients/K/brief").text
    assert client_m.post("/clients/K/brief", data=Form(page).fields).status_code == 303
    assert client_m.get("/clients/K/brief", headers=JSON).json()["version"] == 1


def test_a_changed_form_is_a_new_version_with_a_note_of_what_was_changed(client_m: TestClient, desk: Desk) -> None:
    fields = form(client_m) | {"mon-minutes": "45", "thu-minutes": "30", "chest-emphasis": "priority", "age": "64"}
    fields |= {"caution-knee": "yes", "lifts": "goblet squat = 20x10, 2 left", "title": "Autumn"}
    assert client_m.post(PAGE, data=fields).headers["location"] == PAGE
    raw = asked(desk)
    assert [day["minutes"] for day in raw["days"]] == [45, 30]  # type: ignore[attr-defined]
    assert raw["client"]["cautions"] == [{"tag": "knee", "said_by": ""}]  # type: ignore[index]
    with desk.book() as book:
        noted = changes(book, client_of(book, "M"))[-1][1]
    assert noted == "title, days, muscles, lifts"
    page = client_m.get("/clients/M").text
    assert "Take back: brief: title, days, muscles, lifts" in page and "knee" not in page
    client_m.post("/clients/M/back", data={})
    assert "cautions" not in asked(desk)["client"]  # type: ignore[operator]


def test_every_fault_of_a_form_is_told_with_the_nearest_word_and_nothing_is_written(
    client_m: TestClient, desk: Desk
) -> None:
    before = asked(desk)
    fields = form(client_m) | {"mon-minutes": "5", "avoid": "benchpres", "lifts": "squat", "pins": "plnk on wed"}
    answer = client_m.post(PAGE, data=fields, headers=HTMX)
    assert answer.status_code == 422
    said = unescape(answer.text)
    assert "expected 10 to 240" in said and "Did you mean" in said and "expected a lift" in said and "plnk" in said
    assert asked(desk) == before


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("mon-minutes", "inf", "mon-minutes"),
        ("mon-minutes", "nan", "mon-minutes"),
        ("mon-minutes", "forty", "mon-minutes"),
        ("pins", "plank, avoid squats", "more than one thing"),
        ("pins", "plank, 2 days x 40 min", "more than one thing"),
        ("sport", "football", "on which day"),
        ("place", "the moon", "not in the catalogue"),
        ("clearance_on", "soon", "clearance"),
    ],
)
def test_what_is_wrong_in_a_field_is_told(client_m: TestClient, field: str, typed: str, said: str) -> None:
    answer = client_m.post(PAGE, data=form(client_m) | {field: typed})
    assert answer.status_code == 422
    assert said.replace("mon-minutes", "minutes") in unescape(answer.text)


def test_a_typed_phrase_fills_the_fields_and_keeps_what_belongs_to_the_person(client_m: TestClient) -> None:
    client_m.post(PAGE, data=form(client_m) | {"caution-knee": "yes", "title": "Autumn"})
    fields = form(client_m) | {"phrase": "2 days x 30 min, hotel gym, grow delts", "from": "phrase"}
    answer = client_m.post(f"{PAGE}/read", data=fields, headers=HTMX)
    filled = Form('<form class="brief"' + answer.text).fields
    assert (filled["mon-minutes"], filled["thu-minutes"], filled["place"]) == ("30", "30", "hotel gym")
    assert filled["delts-emphasis"] == "priority" and filled["caution-knee"] == "yes"
    assert filled["experience"] == "novice", "what the line does not say of the person stays"
    assert filled["title"] == "Autumn", "what no line can say stays"
    assert "days: Mon, Thu" in answer.text
    assert client_m.get(PAGE, headers=JSON).json()["version"] == 2, "nothing is written by reading"


def test_changed_fields_are_said_in_a_line(client_m: TestClient) -> None:
    fields = form(client_m) | {"mon-minutes": "20", "fri-minutes": "35", "fri-focus": "upper", "from": "fields"}
    answer = client_m.post(f"{PAGE}/read", data=fields, headers=HTMX)
    assert "mon 20 min, fri 35 min upper, with home dumbbells, novice" in answer.text
    document = client_m.post(f"{PAGE}/read", data=fields, headers=JSON).json()
    assert document["phrase"] == "mon 20 min, fri 35 min upper, with home dumbbells, novice"
    assert document["brief"]["days"][1]["focus"] == "upper"


def test_a_line_that_is_not_understood_leaves_the_fields_and_says_why(client_m: TestClient) -> None:
    fields = form(client_m) | {"phrase": "3 days x 40 min, grow dlets", "from": "phrase"}
    answer = client_m.post(f"{PAGE}/read", data=fields, headers=HTMX)
    assert answer.status_code == 200 and answer.headers["hx-reswap"] == "none"
    assert "Did you mean" in unescape(answer.text)
    whole = client_m.post(f"{PAGE}/read", data=fields)
    assert "grow dlets" in whole.text and "<html" in whole.text


def test_what_was_assumed_can_be_taken_over_into_the_line(client_m: TestClient, desk: Desk) -> None:
    fields = form(client_m) | {"phrase": "2 days x 30 min", "from": "phrase"}
    document = client_m.post(f"{PAGE}/read", data=fields, headers=JSON).json()
    over = {one["said"]: one["phrase"] for one in document["assumed"]}
    assert over["days: Mon, Thu"] == "mon thu 30 min"
    assert over["experience: intermediate"] == "2 days x 30 min, intermediate"
    assert over["place: commercial gym"] == "2 days x 30 min, commercial gym"
    for said, phrase in over.items():
        if phrase:
            assert said not in [a.text for a in parse_phrase(phrase, desk.catalogue).assumed]


def test_a_line_that_was_typed_and_not_read_yet_is_written_down_too(client_m: TestClient, desk: Desk) -> None:
    client_m.post(PAGE, data=form(client_m) | {"phrase": "2 days x 35 min, bands"})
    assert [day["minutes"] for day in asked(desk)["days"]] == [35, 35]  # type: ignore[attr-defined]


def test_a_unit_is_not_changed_under_logged_sets(client_m: TestClient, desk: Desk) -> None:
    with desk.book() as book:
        log_sessions(book, client_of(book, "M"), [session(4)])
    answer = client_m.post(PAGE, data=form(client_m) | {"unit": "lb"})
    assert answer.status_code == 422 and "never mixed" in answer.text


def test_a_brief_that_was_changed_elsewhere_is_a_conflict_and_reading_is_none(client_m: TestClient) -> None:
    mine, theirs = form(client_m), form(client_m)
    client_m.post(PAGE, data=theirs | {"title": "Theirs"})
    answer = client_m.post(PAGE, data=mine | {"title": "Mine"}, headers=HTMX)
    assert answer.status_code == 409 and "brief: title" in answer.text
    assert client_m.post(f"{PAGE}/read", data=mine | {"from": "fields"}, headers=HTMX).status_code == 200
    again = re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', answer.text)
    client_m.post(PAGE, data={name: unescape(value) for name, value in again})
    assert client_m.get(PAGE, headers=JSON).json()["brief"]["title"] == "Mine"


def test_each_caution_of_the_catalogue_has_a_box_with_its_sentence(client_m: TestClient, desk: Desk) -> None:
    page = unescape(client_m.get(PAGE).text)
    for caution in desk.catalogue.cautions.values():
        assert f'name="caution-{caution.id}"' in page and caution.sentence in page
