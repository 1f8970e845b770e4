"""Raw briefs understood: names, weekdays, assumptions, groups, and every fault at once."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.defaults import LIMITS, SPREAD, WEEKDAYS
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.brief.schema import Brief, MuscleAsk
from setwright.solver.brief.schema_json import brief_schema

CATALOGUE = load_catalogue()
THREE = {"days": [{"minutes": 40}] * 3}


def faults(raw: dict[str, Any]) -> list[str]:
    with pytest.raises(UsageFault) as caught:
        parse_brief(raw, CATALOGUE, "brief.toml", tuple(CATALOGUE.rules))
    return [str(fault).removeprefix("brief.toml: ") for fault in caught.value.faults]


def brief(**more: Any) -> Brief:
    return parse_brief({**THREE, **more}, CATALOGUE).brief


@pytest.mark.parametrize("count", range(1, 8))
def test_a_count_of_days_alone_is_spread_over_the_week(count: int) -> None:
    """1 Mon; 2 Mon Thu; 3 Mon Wed Fri; and so on to all seven."""
    said = parse_brief({"days": [{"minutes": 30}] * count}, CATALOGUE)
    assert tuple(day.weekday for day in said.brief.days) == SPREAD[count]
    assert said.assumed[0].text == "days: " + ", ".join(day.capitalize() for day in SPREAD[count])


def test_days_are_put_in_the_order_of_the_week() -> None:
    """Sat before Mon in the file is Mon before Sat in the brief."""
    days = [{"weekday": "sat", "minutes": 60}, {"weekday": "mon", "minutes": 40}]
    assert [day.weekday for day in parse_brief({"days": days}, CATALOGUE).brief.days] == ["mon", "sat"]


def test_everything_assumed_is_said() -> None:
    """The shortest brief, with what was taken for granted."""
    assert tuple(one.text for one in parse_brief(THREE, CATALOGUE).assumed) == (
        "days: Mon, Wed, Fri",
        "place: commercial gym",
        "goal: balanced",
        "muscles: every muscle at normal",
        "experience: intermediate",
        "trains alone: no",
        "cautions: none",
        "unit: kg",
    )


def test_what_was_said_is_not_assumed() -> None:
    """A full brief leaves nothing to assume."""
    raw = {
        "days": [{"weekday": "mon", "minutes": 40}],
        "equipment": "barbell garage",
        "goal": "growth",
        "muscles": {"chest": "priority"},
        "client": {"experience": "novice", "trains_alone": True, "cautions": [], "unit": "kg"},
    }
    assert parse_brief(raw, CATALOGUE).assumed == ()


def test_a_kit_that_limits_the_dumbbells_says_so() -> None:
    """The heaviest dumbbell of a kit is an assumption until the brief names it."""
    said = parse_brief({**THREE, "equipment": "hotel"}, CATALOGUE)
    assert "dumbbells in the hotel gym: up to 20 kg" in [one.text for one in said.assumed]
    owned = parse_brief({**THREE, "equipment": "hotel", "owned": {"dumbbell_max": 16}}, CATALOGUE)
    assert not any("dumbbells" in one.text for one in owned.assumed)


def test_plates_and_steps_are_said_to_change_nothing() -> None:
    """Until weeks have loads, what a brief says of plates and dumbbell steps is read and not used."""
    owned = {"plates": [1.25, 2.5, 20], "dumbbell_step": 2.5}
    assumed = parse_brief({**THREE, "owned": owned, "client": {"unit": "lb"}}, CATALOGUE).assumed
    said = [one.text for one in assumed]
    assert "plates of 1.25, 2.5, 20 lb: not used, the week names no loads" in said
    assert "dumbbells in steps of 2.5 lb: not used, the week names no loads" in said
    assert not any("not used" in one.text for one in parse_brief(THREE, CATALOGUE).assumed)


def test_some_days_without_a_place_are_named() -> None:
    """Only the days that name no place are assumed to be in the gym."""
    days = [{"weekday": "mon", "minutes": 40, "equipment": "bands"}, {"weekday": "sat", "minutes": 60}]
    said = parse_brief({"days": days}, CATALOGUE)
    assert "place: commercial gym on Sat" in [one.text for one in said.assumed]


def test_names_become_ids() -> None:
    """Aliases, names, capitals and plurals of everything the catalogue knows."""
    parsed = brief(
        equipment=["Dumbbells", "squat rack", "BENCH"],
        muscles={"shoulders": "priority", "Pecs": "hold"},
        avoid=["Bench press"],
        like=["dumbbells", "squat"],
        without=["ab wheel"],
        client={"cautions": [{"tag": "bad knee"}]},
        must=["hinge"],
    )
    assert parsed.equipment == ("dumbbell", "rack", "bench")
    assert list(parsed.muscles) == ["delts", "chest"]
    assert parsed.avoid == ("barbell-bench-press",)
    assert parsed.like == ("dumbbell", "barbell-back-squat")
    assert parsed.without == ("wheel",)
    assert parsed.client.cautions[0].tag == "knee"


def test_one_word_of_equipment_is_a_kit_and_in_a_list_an_item() -> None:
    """`dumbbells` alone is the home kit; among others it is the dumbbells."""
    assert brief(equipment="dumbbells").equipment == "home-dumbbells"
    assert brief(equipment=["dumbbells", "cable"]).equipment == ("dumbbell", "cable")


def test_a_date_may_be_a_toml_date_or_words() -> None:
    """Both ways of writing a clearance's date come to the same."""
    asked = [brief(client={"clearance": {"by": "Dr N.", "on": on}}) for on in (date(2025, 3, 2), "2025-03-02")]
    assert asked[0] == asked[1]


FAULTY: tuple[tuple[dict[str, Any], list[str]], ...] = (
    ({}, ["days: is missing, expected one day or more, each with its minutes"]),
    ({"days": []}, ["days: got 0, expected 1 to 7"]),
    ({"days": 3}, ["days: got 3, expected a list"]),
    ({"days": [{"minutes": 5}]}, ["days[0].minutes: got 5, expected 10 to 240"]),
    ({"days": [{"minutes": 40.0}]}, ["days[0].minutes: got 40.0, expected a whole number from 10 to 240"]),
    (
        {"days": [{"minutes": "forty"}]},
        ["days[0].minutes: got 'forty', expected a whole number from 10 to 240"],
    ),
    ({"days": [{}]}, ["days[0].minutes: is missing, expected 10 to 240"]),
    (
        {"days": [{"minuts": 40, "minutes": 40}]},
        ["days[0].minuts: is not a field of a brief; did you mean 'minutes'?"],
    ),
    ({**THREE, "gaol": "growth"}, ["gaol: is not a field of a brief; did you mean 'goal'?"]),
    (
        {**THREE, "goal": "growht"},
        ["goal: got 'growht', expected 'growth', 'efficiency' or 'balanced'; did you mean 'growth'?"],
    ),
    ({**THREE, "pairs": "yes"}, ["pairs: got 'yes', expected true or false"]),
    ({**THREE, "title": 3}, ["title: got 3, expected words in quotes"]),
    ({**THREE, "client": "M."}, ["client: got 'M.', expected a table"]),
    ({**THREE, "avoid": "squat"}, ["avoid: got 'squat', expected a list"]),
    ({**THREE, "keep_share": 2}, ["keep_share: got 2, expected 0.5 to 1"]),
    (
        {**THREE, "equipment": ["barbel"]},
        [
            "equipment[0]: 'barbel' is not in the catalogue, expected an item of equipment or a kit; "
            "did you mean 'barbell'?"
        ],
    ),
    (
        {**THREE, "muscles": {"dlets": "priority"}},
        [
            "muscles.dlets: 'dlets' is not in the catalogue, expected a muscle or a group of muscles; "
            "did you mean 'delts'?"
        ],
    ),
    (
        {**THREE, "muscles": {"chest": "prioriti"}},
        [
            "muscles.chest.emphasis: got 'prioriti', expected 'priority', 'normal', 'hold' or 'none'; "
            "did you mean 'priority'?"
        ],
    ),
    (
        {**THREE, "muscles": {"delts": "hold", "shoulders": "hold"}},
        ["muscles.shoulders: is 'delts' a second time; keep one of the two"],
    ),
    (
        {**THREE, "muscles": dict.fromkeys(("chest", "delts", "back", "arms", "legs", "abs"), "none")},
        ["muscles: every muscle is at none: nothing is left to train; train one at least"],
    ),
    (
        {**THREE, "rules": {"third-dya": "off"}},
        ["rules.third-dya: 'third-dya' is not a rule; did you mean 'third-day'?"],
    ),
    (
        {**THREE, "rules": {"third-day": True}},
        ["rules.third-day: got true, expected 'off', 'hard' or a cost of 0 or more"],
    ),
    (
        {**THREE, "rules": {"third-day": -1}},
        ["rules.third-day: got -1, expected 'off', 'hard' or a cost of 0 or more"],
    ),
    (
        {**THREE, "client": {"clearance": {"by": "", "on": "2 March"}}},
        [
            "client.clearance.by: got '', expected at least one letter",
            "client.clearance.on: got '2 March', expected a date as YYYY-MM-DD",
        ],
    ),
    (
        {**THREE, "pins": [{"exercise": "squat", "day": "tue"}]},
        ["pins[0].day: tue is not a training day; choose one of mon, wed, fri"],
    ),
    ({**THREE, "clock": {"warm_up": 5}}, ["clock.warm_up: got 5, expected 120 to 1200"]),
    (
        {**THREE, "like": ["bench press"], "avoid": ["bench press"]},
        ["avoid: 'barbell-bench-press' stands under like too; keep it in one of the two"],
    ),
    (
        {**THREE, "muscles": {"chest": {"emphasis": "priority", "at_most": 0}}},
        ["muscles.chest: is at priority, yet at most 0 sets; drop one of the two"],
    ),
)


@pytest.mark.parametrize(("raw", "said"), FAULTY, ids=[said[0][:50] for _, said in FAULTY])
def test_a_fault_says_where_what_was_got_and_what_was_expected(raw: dict[str, Any], said: list[str]) -> None:
    """One fault each, word for word."""
    assert faults(raw) == said


def test_all_faults_come_at_once() -> None:
    """Unknown words, wrong types and missing fields in one answer."""
    raw = {"days": [{"minutes": 5}, {}], "goal": "x", "equipment": ["barbel"], "must": ["hing"], "tilte": ""}
    assert [line.split(":")[0] for line in faults(raw)] == [
        "equipment[0]",
        "must[0]",
        "days[0].minutes",
        "days[1].minutes",
        "goal",
        "tilte",
    ]


def test_a_group_at_priority_leaves_the_front_at_normal() -> None:
    """Delts: side and rear are the priority, front delts stay normal."""
    asked = expand_muscles(brief(muscles={"delts": "priority"}), CATALOGUE)
    assert {muscle: ask.emphasis for muscle, ask in asked.items()} == {
        "front-delts": "normal",
        "side-delts": "priority",
        "rear-delts": "priority",
    }


@pytest.mark.parametrize("emphasis", ["hold", "none", "normal"])
def test_a_group_otherwise_means_all_its_muscles(emphasis: str) -> None:
    """Any other emphasis goes to all three delts."""
    asked = expand_muscles(brief(muscles={"delts": emphasis}), CATALOGUE)
    assert {ask.emphasis for ask in asked.values()} == {emphasis}
    assert list(asked) == ["front-delts", "side-delts", "rear-delts"]


def test_a_muscle_named_itself_wins_over_its_group() -> None:
    """In whichever order the two are written."""
    for names in (("legs", "calves"), ("calves", "legs")):
        muscles = {name: {"legs": "priority", "calves": "none"}[name] for name in names}
        assert expand_muscles(brief(muscles=muscles), CATALOGUE)["calves"].emphasis == "none"


def test_two_groups_that_disagree_about_a_muscle_are_a_fault() -> None:
    """A catalogue of a coach's own may have groups that overlap."""
    from dataclasses import replace

    from setwright.catalogue.entries import Group

    upper = Group("upper-body", "Upper body", ("chest", "lats"), ("chest", "lats"))
    catalogue = replace(CATALOGUE, groups={**CATALOGUE.groups, "upper-body": upper})
    with pytest.raises(UsageFault) as caught:
        parse_brief({**THREE, "muscles": {"back": "hold", "upper-body": "priority"}}, catalogue)
    assert str(caught.value) == (
        "muscles.upper-body: asks priority of lats, but back asks hold; say what lats gets by its own name"
    )
    agreed = parse_brief({**THREE, "muscles": {"back": "hold", "upper-body": "hold"}}, catalogue).brief
    assert expand_muscles(agreed, catalogue)["lats"] == MuscleAsk(emphasis="hold")


def test_the_json_schema_accepts_an_emphasis_alone() -> None:
    """Editors may check a brief: fields are closed, limits are stated."""
    schema = brief_schema()
    assert schema["additionalProperties"] is False
    assert schema["properties"]["muscles"]["additionalProperties"]["anyOf"][0]["enum"][0] == "priority"
    assert schema["$defs"]["DayAsk"]["properties"]["minutes"]["maximum"] == LIMITS["minutes"][1]


def _maybe(**fields: st.SearchStrategy[Any]) -> st.SearchStrategy[dict[str, Any]]:
    return st.fixed_dictionaries({}, optional=fields)


MUSCLES = st.one_of(
    st.sampled_from(["priority", "normal", "hold"]),
    st.builds(lambda low, more: {"at_least": low, "at_most": low + more}, st.integers(0, 9), st.integers(1, 9)),
)
BRIEFS = st.builds(
    lambda weekdays, minutes, rest: {
        "days": [{"weekday": day, "minutes": minutes} for day in weekdays],
        **rest,
    },
    st.lists(st.sampled_from(WEEKDAYS), min_size=1, max_size=7, unique=True),
    st.integers(10, 240),
    _maybe(
        title=st.text(max_size=10),
        equipment=st.one_of(
            st.sampled_from(sorted(CATALOGUE.kits)),
            st.lists(st.sampled_from(sorted(CATALOGUE.items)), min_size=1, max_size=4),
        ),
        without=st.lists(st.sampled_from(sorted(CATALOGUE.items)), max_size=3),
        goal=st.sampled_from(["growth", "efficiency", "balanced"]),
        pairs=st.booleans(),
        keep_share=st.floats(0.5, 1),
        reps=st.sampled_from(["lower", "higher"]),
        muscles=st.dictionaries(st.sampled_from(sorted(CATALOGUE.muscles)), MUSCLES, max_size=4),
        avoid=st.lists(st.sampled_from(sorted(CATALOGUE.exercises)), max_size=3),
        must=st.lists(st.sampled_from(["hinge", "knee", "row"]), max_size=3),
        rules=st.dictionaries(
            st.sampled_from(sorted(CATALOGUE.rules)), st.sampled_from(["off", "hard", 2.5]), max_size=2
        ),
        owned=_maybe(dumbbell_max=st.floats(1, 200), plates=st.lists(st.sampled_from([1.25, 5.0]), max_size=2)),
        client=_maybe(experience=st.sampled_from(["novice", "advanced"]), trains_alone=st.booleans()),
        clock=_maybe(warm_up=st.integers(120, 600), seconds_per_rep=st.floats(1, 12)),
    ),
)


@given(BRIEFS)
@settings(max_examples=60, deadline=None)
def test_a_brief_written_out_is_understood_as_itself(raw: dict[str, Any]) -> None:
    """Dumped and read again it is the same, and only what was unsaid is filled in the first time."""
    once = parse_brief(raw, CATALOGUE).brief
    again = parse_brief(raw_of(once), CATALOGUE)
    assert again.brief == once
    assert not any(one.text.startswith(("days", "place", "goal", "experience")) for one in again.assumed)


@given(st.text(max_size=60))
@settings(max_examples=150, deadline=None)
def test_any_line_is_a_brief_or_a_usage_fault(line: str) -> None:
    """No text breaks the reading of a phrase."""
    from setwright.solver.brief.file import parse_phrase

    try:
        parse_phrase(line, CATALOGUE)
    except UsageFault as fault:
        assert fault.faults


WORDS = ("3", "40", "x", "days", "min", "mon", "to", "-", ",", "and", "grow", "no", "hold", "delts", "chest", "at",
         "most", "sets", "on", "with", "dumbbells", "home", "pin", "bench", "press", "bad", "knee", "an", "hour",
         "keep", "%", "rule", "off", "sport", "must", "up", "by", "kg", "lower", "reps", "upper")  # fmt: skip


@given(st.lists(st.sampled_from(WORDS), min_size=1, max_size=14).map(" ".join))
@settings(max_examples=400, deadline=None)
def test_known_words_in_any_order_are_a_brief_or_a_usage_fault(line: str) -> None:
    """The grammar holds on its own words, however they are shuffled."""
    from setwright.solver.brief.file import parse_phrase

    try:
        parse_phrase(line, CATALOGUE)
    except UsageFault as fault:
        assert fault.faults
