"""A week read back from JSON."""

from __future__ import annotations

import copy
import json
from typing import Any

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.solver.auditing import audit
from setwright.solver.planning import Solved
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.json_values import dumped, parse_json
from setwright.solver.sheets.document.figures import evaluated_part
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.document.week_reader import read_week


@pytest.fixture
def document(solved: Solved) -> dict[str, Any]:
    found: dict[str, Any] = copy.deepcopy(json.loads(dumped(week_document(solved, private=True))))
    return found


def test_a_week_read_back_is_the_same_and_audits_the_same(
    document: dict[str, Any], solved: Solved, catalogue: Catalogue
) -> None:
    parsed, week = read_week(document, catalogue)
    assert parsed.brief == solved.parsed.brief
    assert week == solved.audit.evaluated.week
    again = audit(resolve(parsed.brief, catalogue), week)
    assert (again.broken, again.charged) == (solved.audit.broken, solved.audit.charged)
    assert evaluated_part(again) == evaluated_part(solved.audit)


def faults_of(document: Any, catalogue: Catalogue) -> list[str]:
    with pytest.raises(UsageFault) as caught:
        read_week(document, catalogue)
    return [str(fault) for fault in caught.value.faults]


def test_every_fault_is_named_at_once(document: dict[str, Any], catalogue: Catalogue) -> None:
    first, second = document["days"][0]["entries"][:2]
    first["exercise"] = "barbel-back-squat"
    first["sets"] = "three"
    second["reps"] = [12, 8]
    second["technique"] = "cluster"
    document["days"][1]["weekday"] = "sun"
    faults = faults_of(document, catalogue)
    assert len(faults) == 5
    assert "did you mean 'barbell-back-squat'?" in faults[0]
    assert "days[0].entries[0].sets: got 'three', expected a whole number from 1 to 20" in faults[1]
    assert "lower number first" in faults[2]
    assert "got 'cluster', expected 'straight', 'drop' or 'rest-pause'" in faults[3]
    assert "days[1].weekday: got 'sun', expected 'thu'" in faults[4]


@pytest.mark.parametrize("thing", [None, [], "week", 3, True])
def test_what_is_no_object_is_no_week(thing: Any, catalogue: Catalogue) -> None:
    assert "expected one week as an object" in faults_of(thing, catalogue)[0]


def test_another_schema_is_refused(document: dict[str, Any], catalogue: Catalogue) -> None:
    document["schema"] = "setwright.week/9"
    assert faults_of(document, catalogue) == [
        "week: schema: got 'setwright.week/9', expected 'setwright.week/1'; name a week that setwright wrote as JSON"
    ]


@pytest.mark.parametrize("value", [True, 2.5, None, -1, 0, 10**9, [], {}])
def test_sets_are_a_whole_number_in_reason(value: Any, document: dict[str, Any], catalogue: Catalogue) -> None:
    document["days"][0]["entries"][0]["sets"] = value
    assert "days[0].entries[0].sets" in faults_of(document, catalogue)[0]


def test_days_are_as_many_as_the_briefs(document: dict[str, Any], catalogue: Catalogue) -> None:
    document["days"].pop()
    assert "has 1 days, expected the brief's 2" in faults_of(document, catalogue)[0]


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "is empty"),
        (b"\xff\xfe\x00", "is not UTF-8 text"),
        (b"{", "is not JSON"),
        (b"[" * 100_000, "is not JSON"),
        (b" " * 5_000_000, "is larger than 4 MB"),
    ],
)
def test_a_file_that_is_no_json_says_why(data: bytes, said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        parse_json(data, "week.json")
