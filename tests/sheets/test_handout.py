"""What is handed over says what the week's document says, and nothing of health."""

from __future__ import annotations

import json
from datetime import date
from typing import Any

import pytest
from handed import PAIRS, THREE, document, handed, shipped

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.cli.exit_codes import ExitCode, exit_code_of
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.costs import ALWAYS
from setwright.solver.sheets.document.redaction import tells_of_health
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import handout_of
from setwright.solver.sheets.handout.reasons import GIVEN_UP

BOTH = pytest.mark.parametrize("name", [THREE, PAIRS])


@BOTH
def test_sessions_are_the_documents(name: str) -> None:
    said, h = document(name), handed(name)
    assert [s.seconds for s in h.sessions] == [d["seconds"] for d in said["days"]]
    assert [dict(s.seconds_by_kind) for s in h.sessions] == [d["seconds_by_kind"] for d in said["days"]]
    for session, day in zip(h.sessions, said["days"], strict=True):
        assert [x.exercise for x in session.lines] == [e["exercise"] for e in day["entries"]]
        assert [x.label[0] for x in session.lines] == [e["group"] for e in day["entries"]]
        assert [x.why for x in session.lines] == [e["why"] for e in day["entries"]]
        assert [bool(x.ramp_up) for x in session.lines] == [e["ramp_up_sets"] > 0 for e in day["entries"]]
        assert session.minutes == -(-day["seconds"] // 60) <= session.given == day["minutes"]


@BOTH
def test_muscles_and_index_are_the_documents(name: str) -> None:
    said, h = document(name), handed(name)
    rows = {m["muscle"]: m for m in said["muscles"]}
    assert h.index == round(said["stimulus"], 1)
    assert list(h.interval) == said["interval"]
    for m in h.muscles:
        row = rows[m.id]
        assert (m.sets, m.days, m.index, list(m.interval)) == (row["sets"], row["days"], row["index"], row["interval"])
        assert (None if m.band is None else list(m.band)) == row["band"]


def test_a_pair_shares_a_letter_and_its_first_has_no_rest() -> None:
    pairs = [x for s in handed(PAIRS).sessions for x in s.lines if x.partner]
    assert pairs
    for first, second in zip(pairs[::2], pairs[1::2], strict=True):
        assert (first.label[-1], second.label[-1]) == ("1", "2")
        assert first.label[:-1] == second.label[:-1]
        assert first.rest == "0:00" != second.rest
        assert (first.partner, second.partner) == (second.name, first.name)


def test_why_this_week_names_the_priority_muscles_and_their_sets() -> None:
    first, minutes, given_up = handed().why
    rows = {row["muscle"]: row for row in document()["muscles"]}
    for muscle, name in (("side-delts", "side delts"), ("rear-delts", "rear delts")):
        row = rows[muscle]
        assert f"{name} with {row['sets']:g} weekly sets on {row['days']} days" in first
    working = sum(e["sets"] for d in document()["days"] for e in d["entries"])
    assert f"120 minutes a week hold {working} working sets in 3 sessions" in minutes
    assert minutes.endswith(("short of them: calves.", "short of them: abs."))
    dearest = max((c for c in document()["costs"] if c["rule"] not in ALWAYS), key=lambda c: c["cost"])["rule"]
    assert given_up.endswith(f"{GIVEN_UP[dearest]}.")


def test_what_was_given_up_follows_the_documents_costs() -> None:
    said = document()
    said["costs"] = [{"rule": "band-low", "cost": 9.0}, {"rule": "distinct", "cost": 99.0}]
    assert handout_of(said, shipped()).why[2].endswith("fewer weekly sets than aimed for (calves).")
    said["costs"] = [{"rule": "liked", "cost": -1.0}]
    assert handout_of(said, shipped()).why[2].startswith("Nothing that a good week should have")


def test_every_scored_rule_has_plain_words() -> None:
    assert set(GIVEN_UP) == {rule.id for rule in RULES.values() if rule.kind == "scored"} - set(ALWAYS)


def test_exclusions_are_named_without_a_reason() -> None:
    assert handed(PAIRS).left_out == (shipped().exercises["goblet-squat"].name,)


def test_health_notes_are_nowhere_in_it() -> None:
    said = document(PAIRS)
    assert said["brief"]["client"]["cautions"][0]["tag"] == "wrist"
    h = handed(PAIRS)
    text = json.dumps(h.document) + repr([h.title, h.goal, h.why, h.left_out, h.client, h.asked])
    assert "wrist" not in text.lower().replace("dumbbell-wrist-curl", "")
    assert "cautions" not in h.document["brief"]["client"]


@pytest.mark.parametrize(
    ("title", "told"),
    [
        ("Three times 45, shoulder caution", True),
        ("after her knee operation", True),
        ("Rehab block", True),
        ("Pregnant, second third", True),
        ("Three times 40, delts first", False),
        ("Uneven days, three places", False),
        ("Wristbands welcome", False),
        ("", False),
    ],
)
def test_a_title_that_tells_of_health_is_not_handed_over(title: str, told: bool) -> None:
    said = document()
    said["brief"]["title"] = title
    h = handout_of(said, shipped())
    assert tells_of_health(title, shipped()) is told
    assert h.title == (title if title and not told else "Training week")
    assert h.document["brief"]["title"] == ("" if told else title)


def test_an_open_document_is_handed_over_whole() -> None:
    assert dict(handed().document) == document()


def test_a_week_that_needs_clearance_is_refused() -> None:
    said = document()
    said["clearance_needed"] = True
    with pytest.raises(SetwrightError, match="clearance is missing") as caught:
        handout_of(said, shipped())
    assert exit_code_of(caught.value) is ExitCode.ERROR


def test_a_caution_in_the_document_outweighs_its_flag() -> None:
    said = document()
    said["brief"]["client"]["cautions"] = [{"tag": "kidney-disease"}]
    with pytest.raises(SetwrightError, match="clearance is missing"):
        handout_of(said, shipped())
    said["brief"]["client"]["clearance"] = {"by": "a physician", "on": "2026-01-02"}
    assert handout_of(said, shipped()).client == "R33"


def test_a_document_that_is_silent_of_clearance_is_refused() -> None:
    said = document()
    del said["clearance_needed"]
    with pytest.raises(UsageFault, match="expected true or false"):
        handout_of(said, shipped())


def test_every_fault_beyond_the_entries_is_named_at_once() -> None:
    said: dict[str, Any] = document()
    first, second = said["days"][0]["entries"][:2]
    first["swaps"] = ["no-such-lift"]
    first["why"] = 3
    second["load"] = 20
    said["costs"] = [{"rule": 1}]
    said["stimulus"] = "high"
    said["assumed"] = "days"
    with pytest.raises(UsageFault) as caught:
        handout_of(said, shipped(), where="w.json")
    text = [str(f) for f in caught.value.faults]
    assert text == [
        "w.json: assumed: got 'days', expected a list",
        "w.json: costs[0].rule: got 1, expected text",
        "w.json: costs[0].cost: is missing, expected a number",
        "w.json: days[0].entries[0].swaps[0]: 'no-such-lift' is not in the catalogue, expected an exercise; "
        "write a name of the list of exercises",
        "w.json: days[0].entries[0].why: got 3, expected text",
        "w.json: days[0].entries[1].load: got 20, expected text or null",
        "w.json: stimulus: got 'high', expected a number",
    ]


def test_review_and_names_come_from_the_coach() -> None:
    coach = Coach(review_weeks=4, start=date(2026, 1, 5), exercises={"hack-squat": "Kniebeuge"})
    h = handed(coach=coach)
    assert (h.start, h.review) == (date(2026, 1, 5), date(2026, 2, 2))
    assert h.sessions[0].lines[0].name == "Kniebeuge"
    assert handed(coach=coach, start=date(2026, 3, 2)).review == date(2026, 3, 30)
