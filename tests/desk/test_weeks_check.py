"""A week made elsewhere, pasted or uploaded."""

from __future__ import annotations

import pytest
from at_desk import JSON
from starlette.testclient import TestClient

WEEK = "day,exercise,sets,reps,RIR,rest\nMonday,Goblet squat,3,8-12,2,60\nMonday,Dumbbell bench press,3,8-12,2,60\n"


def test_a_pasted_week_is_held_against_the_clients_brief(client_m: TestClient) -> None:
    document = client_m.post("/clients/M/check", data={"week": WEEK, "brief": "yes"}, headers=JSON).json()
    assert document["schema"] == "setwright.audit/1" and document["days"][0]["minutes"] == 20
    text = client_m.post("/clients/M/check", data={"week": WEEK}).text
    assert "Goblet squat" in text and "Week index" in text


def test_an_uploaded_week_is_the_same(client_m: TestClient) -> None:
    files = {"file": ("week.csv", WEEK.encode(), "text/csv")}
    uploaded = client_m.post("/clients/M/check", files=files, data={"brief": "yes"}, headers=JSON).json()
    assert uploaded == client_m.post("/clients/M/check", data={"week": WEEK, "brief": "yes"}, headers=JSON).json()


def test_a_name_that_is_only_near_is_taken_where_that_is_said(client_m: TestClient) -> None:
    near = WEEK.replace("Goblet squat", "Goblet sqat")
    assert client_m.post("/clients/M/check", data={"week": near}, headers=JSON).status_code == 422
    notes = client_m.post("/clients/M/check", data={"week": near, "near": "yes"}, headers=JSON).json()["notes"]
    assert any("Goblet sqat" in said for said in notes)


@pytest.mark.parametrize("week", ["", "nothing that is a week", "{}"])
def test_what_is_no_week_is_refused(client_m: TestClient, week: str) -> None:
    answer = client_m.post("/clients/M/check", data={"week": week}, headers=JSON)
    assert answer.status_code == 422 and answer.json()["faults"]


def test_the_form_is_labelled(client_m: TestClient) -> None:
    text = client_m.get("/clients/M/check").text
    assert '<label for="paste">' in text and "Check it" in text
