"""Rests and repetitions in reserve that a brief asks for: on every line, told, and never against a caution."""

from __future__ import annotations

from typing import Any

import pytest
from weeks import CATALOGUE, days, terms_of

from setwright.catalogue.faults import UsageFault
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief, raw_of
from setwright.solver.brief.schema_json import brief_schema
from setwright.solver.evaluation.prescriptions import all_prescriptions, pair_rests, rests_of, rir_of
from setwright.solver.sheets.plain.brief_toml import brief_toml
from setwright.solver.sheets.screen.headline import headline

SQUAT, CURL = CATALOGUE.exercises["barbell-back-squat"], CATALOGUE.exercises["cable-curl"]


def parsed(**fields: Any) -> ParsedBrief:
    """A brief of one hour on two days with these fields."""
    return parse_brief({"days": days("mon thu", 60), **fields}, CATALOGUE, "test")


def told(found: ParsedBrief) -> str:
    """All that is assumed, in one text."""
    return "\n".join(assumption.text for assumption in found.assumed)


@pytest.mark.parametrize("goal", ["growth", "balanced", "efficiency"])
@pytest.mark.parametrize(("least", "most"), [(None, 45), (None, 100), (150, None), (70, 80), (100, 100), (300, 300)])
def test_every_way_to_do_a_lift_rests_within_what_is_asked(goal: str, least: int | None, most: int | None) -> None:
    resolved = terms_of(goal=goal, rest_at_least=least, rest_at_most=most, pairs=None)
    for exercise in CATALOGUE.exercises.values():
        ways = tuple(all_prescriptions(resolved, exercise, resolved.days[0]))
        assert ways and all((least or 0) <= way.rest <= (most or 999) for way in ways)
        assert not (least and any(way.paired for way in ways))


def test_what_is_not_asked_changes_no_rest_and_no_effort() -> None:
    assert terms_of().rest_span[0] == 0
    for exercise in CATALOGUE.exercises.values():
        wide = terms_of(rest_at_least=15, rest_at_most=300, pairs=None)
        assert rests_of(wide, exercise) == rests_of(terms_of(), exercise)
        assert rir_of(terms_of(rir_at_least=1), exercise) == rir_of(terms_of(), exercise)


def test_the_nearest_rest_is_taken_where_the_goal_has_none_within() -> None:
    assert rests_of(terms_of(goal="growth", rest_at_most=60), SQUAT) == (60,)
    assert rests_of(terms_of(goal="efficiency", rest_at_least=180, pairs=None), CURL) == (180,)
    assert set(pair_rests(terms_of(goal="efficiency", rest_at_most=30), CURL)) == {30}
    assert set(pair_rests(terms_of(goal="efficiency", rest_at_least=75, pairs=True), CURL)) == {75}


def test_effort_is_the_greater_of_the_lift_s_own_and_what_is_asked() -> None:
    assert (rir_of(terms_of(), CURL), rir_of(terms_of(), SQUAT)) == (1, 2)
    assert {rir_of(terms_of(rir_at_least=3), lift) for lift in (CURL, SQUAT)} == {3}
    assert rir_of(terms_of(rir_at_least=3, rir_more=2), SQUAT) == 4
    assert not terms_of(rir_at_least=1).techniques
    assert terms_of(rir_at_least=1, techniques=True).techniques


def test_the_last_rest_is_no_longer_than_what_is_asked() -> None:
    assert terms_of(goal="growth", rest_at_most=30).days[0].last_rest == 30


def test_a_caution_goes_before_shorter_rests_and_less_effort_and_it_is_told() -> None:
    client = {"cautions": [{"tag": "high-blood-pressure"}]}
    found = parsed(client=client, rest_at_most=60, rir_at_least=1)
    resolved = terms_of(client=client, rest_at_most=60, rir_at_least=1)
    assert set(rests_of(resolved, CURL)) == {90} and rir_of(resolved, CURL) == 3
    health = [a.text for a in found.assumed if a.kind == "health"]
    assert "rests of at most 60 s: asked for, longer because a caution asks for 90 s" in health


def test_it_is_told_in_the_header_and_under_assumed() -> None:
    found = parsed(rest_at_least=60, rest_at_most=90, rir_at_least=2)
    assert "rests of at least 60 s and at most 90 s; at least 2 RIR" in headline(
        terms_of(rest_at_least=60, rest_at_most=90, rir_at_least=2)
    )
    for words in (
        "rests: at most 90 s",
        "rests: at least 60 s after every set, so no pairs",
        "at least 2 RIR: no drop",
    ):
        assert words in told(found)


def test_the_file_and_the_schema_have_them() -> None:
    found = parsed(rest_at_most=90, rir_at_least=2).brief
    text = brief_toml(found).decode()
    assert "rest_at_most = 90" in text and "rir_at_least = 2" in text
    assert parse_brief(raw_of(found), CATALOGUE).brief == found
    assert {"rest_at_least", "rest_at_most", "rir_at_least"} <= brief_schema()["properties"].keys()


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"rest_at_least": 120, "rest_at_most": 60}, "at least 120 s is more than at most 60 s"),
        ({"rest_at_most": 5}, "got 5, expected 30 to 300"),
        ({"rir_at_least": 9}, "got 9, expected 0 to 5"),
    ],
)
def test_what_cannot_be_is_a_fault(fields: dict[str, Any], said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        parsed(**fields)
