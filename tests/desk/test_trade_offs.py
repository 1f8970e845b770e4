"""Goals side by side, what time buys and a season on the desk: asked for, shown, kept, refused."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from at_desk import JSON
from starlette.testclient import TestClient
from told import CHEAP, Listener, asked, raw, stood

from setwright.catalogue.load import load_catalogue
from setwright.solver.desk.trade_offs import search_compare, search_curve
from setwright.solver.desk.trade_offs.filters import compare_facts, compare_muscles
from setwright.solver.desk.weeks.find import part_at
from setwright.solver.sheets.charts.season import chart_of_document

Found = tuple[dict[str, Any], Listener]


@pytest.fixture(scope="module")
def cheap() -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(search_compare, "SEARCHES", CHEAP)
        patch.setattr(search_curve, "SEARCHES", CHEAP)
        yield


@pytest.fixture(scope="module")
def comparison(cheap: None) -> Found:
    listener = Listener(stop_at=2)
    arguments = {"brief": raw(), "goals": ["growth", "efficiency"], "search": "quick"}
    return dict(search_compare.compare_goals(arguments, load_catalogue(), listener)), listener


@pytest.fixture(scope="module")
def curve(cheap: None) -> Found:
    listener = Listener()
    arguments = {"brief": raw(), "by": "minutes", "amounts": [15, 25, 40], "search": "quick"}
    return dict(search_curve.search_curve(arguments, load_catalogue(), listener)), listener


def faults(answer: Any) -> list[str]:
    assert answer.status_code == 422, answer.text
    return [fault["where"] for fault in answer.json()["faults"]]


# ---- goals side by side


def test_goals_are_asked_for_in_their_order(client_m: TestClient) -> None:
    answer = client_m.post("/clients/M/compare", data={"goals": ["efficiency", "growth"], "search": "quick"})
    assert answer.status_code == 303
    task = asked(client_m, answer.headers["location"])
    assert (task.name, task.arguments["goals"], task.arguments["search"]) == (
        "compare",
        ["growth", "efficiency"],
        "quick",
    )


def test_briefs_stand_beside_the_clients_own_as_phrases_and_by_code(client_m: TestClient, comparison: Found) -> None:
    client_m.post("/clients", data={"code": "N", "phrase": "2 days x 30 min, home dumbbells"})
    form = {"others": "2 days x 25 min\n\n@N\n", "search": "quick"}
    task = asked(client_m, client_m.post("/clients/M/compare", data=form).headers["location"])
    assert task.arguments["goals"] == [] and [len(raw["days"]) for raw in task.arguments["others"]] == [2, 2]
    mine, theirs = task.arguments["others"]
    assert mine["client"]["code"] == "M" and mine["client"]["experience"] == "novice", "the person stays"
    assert mine["equipment"] == task.arguments["brief"]["equipment"] or mine["equipment"], "what a phrase says goes"
    assert theirs["client"]["code"] == "N"
    assert task.arguments["names"] == ["@M: 1 day x 20 min", "@M: 2 days x 25 min", "@N: 2 days x 30 min"]
    under = asked(client_m, client_m.post("/clients/M/compare", data={**form, "goals": "growth"}).headers["location"])
    assert under.arguments["goals"] == ["growth"]


def test_every_fault_of_other_briefs_is_told_with_its_line(client_m: TestClient) -> None:
    said = faults(client_m.post("/clients/M/compare", data={"others": "@Z\n2 days x 25 min\n9 days"}, headers=JSON))
    assert [where.partition(":")[0] for where in said] == ["other brief 1", "other brief 3"]
    many = {"others": "\n".join(["1 day x 20 min"] * 4), "goals": ["growth", "balanced", "efficiency"]}
    assert faults(client_m.post("/clients/M/compare", data=many, headers=JSON)) == ["compare"], "15 weeks"
    lines = {"others": "\n".join(["1 day x 20 min"] * 12)}
    assert faults(client_m.post("/clients/M/compare", data=lines, headers=JSON)) == ["other briefs"]


def test_a_week_of_another_clients_brief_is_shown_and_not_kept(client_m: TestClient, cheap: None) -> None:
    theirs = {**raw(), "client": {**raw()["client"], "code": "N"}}
    arguments = {"brief": raw(), "others": [theirs], "goals": [], "search": "quick"}
    document = dict(search_compare.compare_goals(arguments, load_catalogue(), Listener(stop_at=2)))
    assert [case["label"][0] for case in document["cases"]] == ["A", "B"]
    page = client_m.get(stood(client_m, "compare", document)).text
    assert 'value="cases/0/week"' in page and 'value="cases/1/week"' not in page
    answer = client_m.post("/clients/M/keep", data={"found": "compare-told", "part": "cases/1/week"}, headers=JSON)
    assert faults(answer) == ["week"] and "another client" in answer.text
    assert client_m.post("/clients/M/keep", data={"found": "compare-told", "part": "cases/0/week"}).status_code == 303


@pytest.mark.parametrize(
    ("form", "where"),
    [({"goals": ["growth"]}, "goals"), ({"goals": ["growth", "speed"]}, "goals"), ({"search": "endless"}, "search")],
)
def test_a_comparison_that_cannot_be_is_refused(client_m: TestClient, form: dict[str, Any], where: str) -> None:
    assert faults(client_m.post("/clients/M/compare", data=form, headers=JSON)) == [where]


def test_the_form_says_what_was_asked_for_last(client_m: TestClient, comparison: Found) -> None:
    assert client_m.get("/clients/M/compare", headers=JSON).json()["latest"] is None
    stood(client_m, "compare", comparison[0])
    document = client_m.get("/clients/M/compare", headers=JSON).json()
    assert document["schema"] == "setwright.trade-offs/1" and document["latest"]["id"] == "compare-told"
    assert "/searches/compare-told" in client_m.get("/clients/M/compare").text


def test_each_goal_is_told_as_it_is_found(comparison: Found) -> None:
    document, listener = comparison
    assert document["schema"] == "setwright.compare/1" and [c["goal"] for c in document["cases"]] == [
        "growth",
        "efficiency",
    ]
    parts = [what["part"] for what in listener.told]
    assert parts[0] == (0, 2) and parts[-1] == (2, 2) and parts == sorted(parts)
    after_one = next(what for what in listener.told if what["part"][0] == 1)
    assert [case["goal"] for case in after_one["document"]["cases"]] == ["growth"]


def test_the_weeks_stand_side_by_side(client_m: TestClient, comparison: Found) -> None:
    document = comparison[0]
    page = client_m.get(stood(client_m, "compare", document)).text
    for name, cells in compare_facts(document):
        assert name in page and all(f">{cell}<" in page for cell in cells)
    for case in document["cases"]:
        low, high = case["week"]["interval"]
        assert f">{low} to {high}<" in page
        assert all(line["name"] in page for day in case["week"]["days"] for line in day["entries"])
    assert all(said in page.replace("&#39;", "'") for said in document["order"]["words"])
    assert page.count("<svg") == 1 and "style=" not in page and "onclick" not in page


def test_a_table_of_muscles_says_where_the_weeks_agree(comparison: Found) -> None:
    rows = compare_muscles(comparison[0])
    assert rows and all(row["same"] == (len(set(row["sets"])) == 1) for row in rows)
    weeks = [case["week"] for case in comparison[0]["cases"]]
    trained = {m["muscle"] for week in weeks for m in week["muscles"] if m["sets"]}
    assert {row["muscle"] for row in rows} == trained


def test_a_week_of_a_comparison_is_kept(client_m: TestClient, comparison: Found) -> None:
    stood(client_m, "compare", comparison[0])
    kept = {"found": "compare-told", "part": "cases/1/week", "starts": "2026-11-30"}
    answer = client_m.post("/clients/M/keep", data=kept)
    assert answer.headers["location"] == "/clients/M/weeks/2026-11-30"
    shown = client_m.get("/clients/M/weeks/2026-11-30", headers=JSON).json()
    assert comparison[0]["cases"][1]["week"].items() <= shown.items()
    weeks = client_m.get("/clients/M", headers=JSON).json()["weeks"]
    assert weeks == [["2026-11-30", "chosen among goals on the desk"]]


@pytest.mark.parametrize("part", ["", "cases", "cases/9/week", "cases/x/week", "cases/0", "schema", "cases/-1/week"])
def test_what_is_no_week_is_not_kept(client_m: TestClient, comparison: Found, part: str) -> None:
    stood(client_m, "compare", comparison[0])
    assert part_at(comparison[0], part) is None
    answer = client_m.post("/clients/M/keep", data={"found": "compare-told", "part": part}, headers=JSON)
    assert faults(answer) == ["week"]


# ---- what time buys


def test_amounts_are_asked_for(client_m: TestClient) -> None:
    form = {"by": "weekly", "weekly-from": "60", "weekly-to": "100", "weekly-step": "30"}
    task = asked(client_m, client_m.post("/clients/M/minutes", data=form).headers["location"])
    assert (task.name, task.arguments["by"], task.arguments["amounts"]) == ("curve", "weekly", [60, 90, 100])


@pytest.mark.parametrize(
    ("form", "where"),
    [
        ({"by": "hours"}, ["by"]),
        ({"minutes-from": "many", "minutes-to": "½"}, ["minutes from", "minutes to"]),
        ({"minutes-from": "5"}, ["minutes"]),
        ({"minutes-from": "90", "minutes-to": "300"}, ["minutes"]),
        ({"minutes-from": "60", "minutes-to": "40"}, ["minutes"]),
        ({"minutes-step": "0"}, ["minutes"]),
        ({"minutes-from": "20", "minutes-to": "120", "minutes-step": "1"}, ["minutes"]),
        ({"by": "days", "days-to": "8"}, ["days"]),
    ],
)
def test_a_range_that_cannot_be_is_refused(client_m: TestClient, form: dict[str, str], where: list[str]) -> None:
    assert faults(client_m.post("/clients/M/minutes", data=form, headers=JSON)) == where


def test_points_are_told_as_they_come(curve: Found) -> None:
    document, listener = curve
    assert [row["amount"] for row in document["rows"]] == [15, 25, 40] and document["words"]
    assert all(row["week"]["schema"] == "setwright.week/1" for row in document["rows"])
    drawn = [what["document"]["rows"] for what in listener.told if "document" in what]
    assert [row["amount"] for row in drawn[0]] == [40]
    assert all(row["week"] is None for rows in drawn for row in rows)


def test_the_slider_has_a_week_for_every_amount(client_m: TestClient, curve: Found) -> None:
    document = curve[0]
    page = client_m.get(stood(client_m, "curve", document)).text
    assert 'type="range"' in page and 'max="2"' in page and "/static/minutes.js" in page
    assert page.count("data-point") == 3 and page.count('name="part"') == 3
    for place, row in enumerate(document["rows"]):
        assert f'data-said="{row["amount"]} min a session, week index' in page
        assert f'value="rows/{place}/week"' in page
        assert all(line["name"] in page for day in row["week"]["days"] for line in day["entries"])
    assert "style=" not in page and "<svg" in page


def test_a_curve_that_is_still_searched_is_shown_without_slider(client_m: TestClient, curve: Found) -> None:
    so_far = next(what["document"] for what in curve[1].told if "document" in what)
    page = client_m.get(stood(client_m, "curve", so_far, state="running", part=(1, 3))).text
    assert "1 of 3 done" in page and "<svg" in page and 'type="range"' not in page


def test_a_week_of_the_curve_is_kept(client_m: TestClient, curve: Found) -> None:
    stood(client_m, "curve", curve[0])
    kept = {"found": "curve-told", "part": "rows/1/week", "starts": "2026-11-30"}
    assert client_m.post("/clients/M/keep", data=kept).status_code == 303
    assert client_m.get("/clients/M", headers=JSON).json()["weeks"] == [
        ["2026-11-30", "chosen by what time buys on the desk"]
    ]


@pytest.mark.parametrize("name", ["compare", "curve", "season"])
@pytest.mark.parametrize("state", ["waiting", "running", "stopped"])
def test_a_search_without_a_document_has_its_page(client_m: TestClient, name: str, state: str) -> None:
    assert client_m.get(stood(client_m, name, None, state=state)).status_code == 200


@pytest.mark.parametrize("name", ["compare", "curve", "season"])
def test_a_search_that_failed_says_why(client_m: TestClient, name: str) -> None:
    fault = {"where": "days", "said": "differ <b>", "remedy": "make them alike"}
    page = client_m.get(stood(client_m, name, None, state="failed", faults=(fault,))).text
    assert "differ &lt;b&gt;" in page and "Make them alike" in page


# ---- a season


CALENDAR = {
    "calendar-from": ["2026-12-21", "", ""],
    "calendar-to": ["2027-01-03", "", ""],
    "calendar-days": ["0", "", ""],
    "calendar-minutes": ["", "", ""],
    "calendar-kit": ["", "", ""],
}


def test_a_season_is_asked_for_with_its_calendar(client_m: TestClient) -> None:
    form = {
        "from": "2026-11-30",
        "weeks": "16",
        "block-from": "4",
        "block-to": "6",
        "emphasis": "quads, chest",
        **CALENDAR,
    }
    task = asked(client_m, client_m.post("/clients/M/season", data=form).headers["location"])
    assert task.name == "season"
    assert {key: value for key, value in task.arguments.items() if key != "brief"} == {
        "start": "2026-11-30",
        "weeks": 16,
        "block_weeks": [4, 6],
        "calendar": "from,to,days,minutes,kit\r\n2026-12-21,2027-01-03,0,,\r\n",
        "emphasis": ["quads", "chest"],
    }


def test_every_fault_of_a_season_is_told_at_once(client_m: TestClient) -> None:
    rows = {**CALENDAR, "calendar-to": ["2026-12-01", "", ""], "calendar-days": ["9", "", ""]}
    form = {"from": "soon", "weeks": "2", "block-from": "8", "block-to": "4", **rows}
    where = faults(client_m.post("/clients/M/season", data=form, headers=JSON))
    assert where[:3] == ["first day", "weeks", "blocks"] and len(where) >= 5
    assert all(place.startswith("calendar") for place in where[3:])


@pytest.mark.parametrize(
    ("form", "where"),
    [
        ({"emphasis": "delts, elbows"}, "emphasis"),
        ({"weeks": "8", "calendar-from": ["2026-11-01"], "calendar-to": ["2027-12-01"], "calendar-days": ["0"],
          "calendar-minutes": [""], "calendar-kit": [""]}, "calendar"),
    ],
)  # fmt: skip
def test_a_season_that_cannot_be_is_refused(client_m: TestClient, form: dict[str, Any], where: str) -> None:
    answer = client_m.post("/clients/M/season", data={"from": "2026-11-30", **form}, headers=JSON)
    assert faults(answer) == [where]


SEASON = {
    "schema": "setwright.season/1", "first": "2026-01-05", "last": "2026-03-01", "weeks": 8, "gap_share": 0.012,
    "blocks": [
        {"number": n, "first": first, "last": last, "weeks": 4, "lighter_week": light, "minutes": 60,
         "days": [{"weekday": "mon", "minutes": 60, "equipment": []}], "specialised": ["quads"], "held": [],
         "words": "1 day x 60 min, grow quads",
         "muscles": [{"muscle": "quads", "emphasis": "priority", "sets": 8.0, "by_week": [6.0, 8.0, 8.0, 4.0]}]}
        for n, first, last, light in ((1, "2026-01-05", "2026-02-01", "2026-01-26"),
                                      (2, "2026-02-02", "2026-03-01", "2026-02-23"))
    ],
    "between": [], "turns": [{"muscle": "quads", "place": 1, "blocks": [1, 2]}],
}  # fmt: skip


def test_a_season_is_drawn_and_told_block_by_block(client_m: TestClient) -> None:
    page = client_m.get(stood(client_m, "season", SEASON)).text
    assert "8 weeks in 2 blocks" in page and "Mon 26 Jan 2026" in page and "1 day x 60 min, grow quads" in page
    assert chart_of_document(SEASON, load_catalogue()) in page


def test_the_pages_of_trade_offs_lead_to_each_other(client_m: TestClient) -> None:
    for here in ("compare", "minutes", "season"):
        page = client_m.get(f"/clients/M/{here}").text
        for other in ("compare", "minutes", "season"):
            assert f'href="/clients/M/{other}"' in page
        assert client_m.get(f"/clients/nobody/{here}").status_code == 422
