"""The week as JSON."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from dataclasses import replace

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.planning import Solved
from setwright.solver.sheets.common.caution import position_warnings
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.card_labels import letter_of
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.screen.week_table import week_text

KEYS = {
    "schema", "made_by", "brief", "assumed", "goal", "stimulus", "interval", "score", "bound", "gap", "gap_share",
    "ended_by", "costs", "days", "muscles", "overridden", "missed", "clearance_needed", "private_left_out",
    "best_without_pairs", "shortened", "swaps_digest",
}  # fmt: skip
HEALTH = {"cautions": [{"tag": "heart-disease", "said_by": "Dr Q"}, {"tag": "knee"}]}


def test_holds_every_part_of_the_shape(solved: Solved) -> None:
    document = week_document(solved)
    assert set(document) == KEYS
    assert document["schema"] == "setwright.week/1"
    assert set(document["made_by"]) == {"version", "catalogue", "evidence", "seed", "limits"}
    assert [day["weekday"] for day in document["days"]] == ["mon", "thu"]


def test_is_the_same_text_each_time_with_keys_sorted(solved: Solved) -> None:
    text = dumped(week_document(solved))
    assert text == dumped(week_document(solved))
    assert text.endswith("}\n")
    document = json.loads(text)
    assert list(document) == sorted(document)


def test_a_days_seconds_add_up(solved: Solved) -> None:
    for day, resolved in zip(week_document(solved)["days"], solved.resolved.days, strict=True):
        assert sum(day["seconds_by_kind"].values()) == day["seconds"]
        lines = sum(entry["seconds"] for entry in day["entries"])
        assert lines + day["warm_up_seconds"] + day["ramp_up_seconds"] - resolved.last_rest == day["seconds"]
        assert min(day["seconds_by_kind"].values()) >= 0


def test_a_pair_shares_a_letter(solved: Solved) -> None:
    entries = week_document(solved)["days"][0]["entries"]
    assert [(e["group"], e["place"]) for e in entries] == [("A", 1), ("B", 1), ("C", 1), ("D", 1), ("D", 2)]
    assert entries[3]["paired_with"] == entries[4]["exercise"]
    assert [letter_of(n) for n in (0, 25, 26, 27)] == ["A", "Z", "AA", "AB"]


def test_the_reason_names_what_is_served(solved: Solved) -> None:
    entries = week_document(solved)["days"][0]["entries"]
    assert entries[3]["why"].startswith("priority: side delts")
    assert "quads" in entries[0]["why"]


def test_swaps_are_open_do_the_same_work_and_are_not_in_the_day(solved: Solved) -> None:
    exercises = solved.resolved.catalogue.exercises
    for day, resolved in zip(week_document(solved)["days"], solved.resolved.days, strict=True):
        here = {entry["exercise"] for entry in day["entries"]}
        for entry in day["entries"]:
            assert len(entry["swaps"]) <= 2
            for swap in entry["swaps"]:
                assert swap not in here
                assert exercises[swap].direct & exercises[entry["exercise"]].direct
                assert not solved.resolved.excluded_by(exercises[swap], resolved)


def test_at_peak_hour_a_fixed_station_is_swapped_for_work_elsewhere(solved_as: Callable[..., Solved]) -> None:
    busy = solved_as("mon 40 min, busy", ((("machine-chest-press", 3, 90),),))
    entry = week_document(busy)["days"][0]["entries"][0]
    catalogue = busy.resolved.catalogue
    needs = catalogue.exercises[entry["swaps"][0]].needs
    assert all(catalogue.items[item].place != "fixed" for item in needs)


def test_ramp_up_sets_stand_at_the_first_lift_of_a_region(solved: Solved) -> None:
    monday, thursday = week_document(solved)["days"]
    assert [e["ramp_up_sets"] for e in monday["entries"]] == [3, 1, 0, 0, 0]
    assert [e["ramp_up_sets"] for e in thursday["entries"]] == [3, 1, 0, 0, 0]


def test_a_light_lift_has_one_easier_set_and_leaves_the_ramp_up_to_a_loaded_one(
    solved_as: Callable[..., Solved],
) -> None:
    light, press = ("push-up", 3, 90), ("barbell-bench-press", 3, 120)
    alone, both = (week_document(solved_as("mon 40 min", (lines,)))["days"][0] for lines in ((light,), (light, press)))
    assert [e["ramp_up_sets"] for e in alone["entries"]] == [1]
    assert {e["exercise"]: e["ramp_up_sets"] for e in both["entries"]} == {"push-up": 0, "barbell-bench-press": 3}


@pytest.fixture
def unwell(catalogue: Catalogue, solved_as: Callable[..., Solved]) -> Solved:
    raw = {"days": [{"minutes": 30}], "client": HEALTH}
    return solved_as(days=((("machine-chest-press", 3, 90),),), parsed=parse_brief(raw, catalogue))


def test_health_notes_are_left_out_unless_private(unwell: Solved) -> None:
    text = dumped(week_document(unwell))
    for note in ("heart-disease", '"knee"', "Dr Q", "Heart"):
        assert note not in text
    document = week_document(unwell, private=True)
    assert [c["tag"] for c in document["brief"]["client"]["cautions"]] == ["heart-disease", "knee"]
    assert document["clearance_needed"] is True
    assert week_document(unwell)["clearance_needed"] is True


def test_a_bound_that_was_never_lowered_is_null(solved: Solved) -> None:
    document = week_document(replace(solved, bound_units=math.inf))
    assert (document["bound"], document["gap"], document["gap_share"]) == (None, None, None)


def test_rules_said_by_the_brief_are_listed(solved_as: Callable[..., Solved]) -> None:
    document = week_document(solved_as("mon thu 40 min, with pairs, rule third-day off"))
    assert [(row["id"], row["said"]) for row in document["overridden"]] == [("third-day", "off")]


def test_lifts_in_a_position_that_is_warned_of_are_named_to_the_coach_alone(
    catalogue: Catalogue, solved_as: Callable[..., Solved]
) -> None:
    raw = {"days": [{"weekday": "mon", "minutes": 30}], "client": {"cautions": [{"tag": "pregnancy"}]}}
    days = ((("dumbbell-bench-press", 3, 120), ("machine-chest-press", 3, 90)),)
    solved = solved_as(days=days, parsed=parse_brief(raw, catalogue))
    told = "In this week lying flat on the back: Dumbbell bench press (Monday); change any that feels unwell."
    assert position_warnings(solved.audit.evaluated) == (told,)
    assert told in " ".join(week_text(solved, private=True).split())
    assert "flat on the back" not in week_text(solved)
    well = solved_as(days=days, parsed=parse_brief({"days": raw["days"]}, catalogue))
    assert position_warnings(well.audit.evaluated) == ()
