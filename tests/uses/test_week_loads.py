"""The load of each line of a week: from what the brief knows, in one unit, down to what is owned, or to be found."""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.loads.load_words import FIND_IT, line_load_words
from setwright.solver.sheets.common.loads.said_loads import said_loads
from setwright.solver.uses.loads.buildable import Bar, OnePlate, Steps
from setwright.solver.uses.loads.kits import CURL_BARS, kit_on, usual_kit
from setwright.solver.uses.loads.maximum import Formulas, load_for, maximum_of
from setwright.solver.uses.loads.week_loads import adds_to_the_body, week_loads

CATALOGUE = load_catalogue()
FORMULAS = Formulas.of(CATALOGUE)
SQUAT, BENCH, RAISE, PULL_UP = "barbell-back-squat", "dumbbell-bench-press", "dumbbell-side-raise", "loaded-pull-up"


def week(lifts: dict[str, Any] | None, *lines: tuple[str, tuple[int, int], int], **more: Any) -> EvaluatedWeek:
    """One day with these (exercise, repetitions, RIR), evaluated under a brief with these lifts."""
    raw = {"days": [{"weekday": "mon", "minutes": 60}], **({} if lifts is None else {"lifts": lifts}), **more}
    resolved = resolve(parse_brief(raw, CATALOGUE).brief, CATALOGUE)
    return EvaluatedWeek(resolved, Week((tuple(Entry(e, 3, reps, rir, 120) for e, reps, rir in lines),)))


def test_without_lifts_a_week_names_no_loads() -> None:
    evaluated = week(None, (SQUAT, (6, 8), 2))
    assert week_loads(evaluated) == {} and line_load_words(evaluated) == {} and said_loads(evaluated) == {}


def test_a_bar_of_one_s_own_is_the_bar_of_straight_bar_lifts_alone() -> None:
    """Bars of 15 kg are as usual as those of 20 kg (common practice, no source)."""
    evaluated = week({SQUAT: "60x8"}, (SQUAT, (6, 8), 2), owned={"bar": 15})
    resolved = evaluated.resolved
    curl = next(e for e in CATALOGUE.exercises.values() if "ez-bar" in e.needs and e.load == "barbell")
    kits = [kit_on(e, resolved, resolved.days[0]) for e in (CATALOGUE.exercises[SQUAT], curl)]
    assert [kit.weight for kit in kits if isinstance(kit, Bar)] == [15, CURL_BARS["kg"]]


def test_the_load_is_the_heaviest_that_can_be_built_and_neither_formula_passes() -> None:
    """100 kg x 5 with 2 left, for 6 with 2 left: Epley 97.4, Brzycki 96.7, worked by hand; 95 is on the bar."""
    wanted = load_for(maximum_of(100, 5, 2, FORMULAS), 6, 2, FORMULAS)
    assert wanted.epley == pytest.approx(123.33 / (1 + 8 / 30), abs=0.05)
    assert wanted.brzycki == pytest.approx(100 * 36 / 30 / (36 / 29), abs=0.05)
    evaluated = week({"squat": "100x5, 2 left"}, (SQUAT, (6, 8), 2))
    assert line_load_words(evaluated) == {(0, 0): "95 kg"}
    assert said_loads(evaluated)[0, 0].ramp_up.startswith("47.5 kg x 8, 65 kg x 5")


def test_a_known_maximum_is_a_set_of_one() -> None:
    for lifts in ({"squat": "max 140"}, {"squat": {"maximum": 140}}, {"squat": "140x1"}):
        assert line_load_words(week(lifts, (SQUAT, (6, 8), 2))) == line_load_words(
            week({"squat": {"load": 140, "reps": 1, "rir": 0}}, (SQUAT, (6, 8), 2))
        )


def test_a_lift_that_is_not_known_is_found_though_a_near_one_is_known() -> None:
    evaluated = week({"front squat": "100x5"}, (SQUAT, (6, 8), 2), ("push-up", (8, 12), 2), ("band-curl", (12, 15), 1))
    assert line_load_words(evaluated) == {(0, 0): FIND_IT}
    assert said_loads(evaluated)[0, 0].ramp_up == ""


def test_an_empty_table_of_lifts_asks_to_find_every_load() -> None:
    assert set(line_load_words(week({}, (SQUAT, (6, 8), 2), (RAISE, (12, 15), 1))).values()) == {FIND_IT}


def test_what_is_owned_decides_what_is_built() -> None:
    """Of pairs of 20 and 5 kg a 20 kg bar holds 20, 30, 60 and 70; of dumbbells by 4 to 24 kg the press gets 24."""
    owned = {"plates": [20, 5], "dumbbell_step": 4, "dumbbell_max": 24}
    lifts = {"squat": "100x5, 2 left", "dumbbell bench press": "30x10", RAISE: "11x14"}
    evaluated = week(lifts, (SQUAT, (6, 8), 2), (BENCH, (8, 12), 2), (RAISE, (12, 15), 1), owned=owned)
    assert [load.built and load.built.load for load in week_loads(evaluated).values()] == [70, 24, 8]


def test_pounds_stay_pounds_also_where_a_kit_is_known_in_kilograms() -> None:
    """Dumbbells of a home kit go up to 20 or 24 kg: by fives that is 40 or 50 lb."""
    evaluated = week(
        {"dumbbell bench press": "90x10"}, (BENCH, (8, 12), 2), equipment="dumbbells", client={"unit": "lb"}
    )
    heaviest = evaluated.resolved.days[0].dumbbell_max
    assert heaviest is not None
    assert line_load_words(evaluated) == {(0, 0): f"{int(heaviest / 0.45359237 / 5) * 5} lb a dumbbell"}


def test_many_repetitions_are_unsure() -> None:
    assert line_load_words(week({RAISE: "10x15"}, (RAISE, (12, 15), 1)))[0, 0].endswith("a dumbbell, unsure")
    assert line_load_words(week({RAISE: "10x10"}, (RAISE, (10, 12), 2)))[0, 0] == "8 kg a dumbbell"


def test_a_load_under_the_empty_bar_or_the_lightest_dumbbell_is_said_to_be() -> None:
    evaluated = week({"bench press": "15x8", RAISE: "1x10"}, ("barbell-bench-press", (6, 8), 2), (RAISE, (10, 12), 2))
    assert list(line_load_words(evaluated).values()) == ["bar too heavy", "lightest too heavy"]


def test_ramp_up_sets_before_the_lightest_load_are_done_without() -> None:
    evaluated = week({"squat": "23x8"}, (SQUAT, (8, 10), 2))
    assert line_load_words(evaluated)[0, 0] == "20 kg"
    assert said_loads(evaluated)[0, 0].ramp_up.startswith("without load x 8")


@pytest.mark.parametrize(("reps", "rir", "said"), [(6, 2, "10 kg added"), (5, 1, "10 kg added"), (8, 3, FIND_IT)])
def test_a_load_added_to_the_body_is_reckoned_for_as_many_repetitions_or_fewer_only(
    reps: int, rir: int, said: str
) -> None:
    """With a body of 80 kg, 10 kg more x 8 is 90 x 8: for 11 at most 83.4 kg, 3.4 added, where 10 alone says 9.3."""
    evaluated = week({PULL_UP: "10x6, 2 left"}, (PULL_UP, (reps, 10), rir))
    assert line_load_words(evaluated)[0, 0] == said


@settings(max_examples=60, derandomize=True, deadline=None)
@given(st.integers(1, 12), st.integers(1, 12), st.floats(40, 150), st.floats(1, 60))
def test_the_added_load_alone_is_never_too_much_for_fewer_repetitions(
    done: int, asked: int, body: float, added: float
) -> None:
    """By either formula, with the body's weight known it would be at least as much."""
    if asked <= done:
        alone = load_for(maximum_of(added, done, 0, FORMULAS), asked, 0, FORMULAS)
        whole = load_for(maximum_of(added + body, done, 0, FORMULAS), asked, 0, FORMULAS)
        assert alone.brzycki is not None and whole.brzycki is not None
        assert alone.epley <= whole.epley - body + 1e-9 and alone.brzycki <= whole.brzycki - body + 1e-9


def test_a_carry_is_found_never_reckoned() -> None:
    assert line_load_words(week({}, ("dumbbell-farmers-carry", (10, 15), 2))) == {(0, 0): FIND_IT}


@settings(max_examples=60, derandomize=True, deadline=None)
@given(st.lists(st.sampled_from((1.25, 2.5, 5.0, 10.0, 20.0)), max_size=5).map(tuple), st.floats(0, 90))
def test_on_one_end_any_plates_may_hang(pairs: tuple[float, ...], load: float) -> None:
    """Every subset of all single plates, two of each pair."""
    single = (*pairs, *pairs)
    sums = {sum(some) for n in range(len(single) + 1) for some in itertools.combinations(single, n)}
    built = Bar(0, pairs, ends=1).at_most(load)
    assert built is not None
    assert built.load == pytest.approx(max(one for one in sums if one <= load + 1e-6))
    assert sum(built.plates) == pytest.approx(built.load)


def test_each_kind_of_lift_has_its_kit() -> None:
    names = ("leg-press", "plate-curl", "loaded-dip", "landmine-t-bar-row", "curl-bar-curl", "wide-grip-pulldown")
    kinds = {name: usual_kit(CATALOGUE.exercises[name], "kg", None, None) for name in names}
    assert isinstance(kinds["leg-press"], Bar) and kinds["leg-press"].ends == 2 and not kinds["leg-press"].weight
    assert isinstance(kinds["plate-curl"], OnePlate) and kinds["plate-curl"].at_most(19) is not None
    assert [kinds[name].ends for name in ("loaded-dip", "landmine-t-bar-row") if isinstance(kinds[name], Bar)] == [1, 1]
    assert isinstance(kinds["curl-bar-curl"], Bar) and kinds["curl-bar-curl"].weight == CURL_BARS["kg"]
    assert isinstance(kinds["wide-grip-pulldown"], Steps)


def test_held_plates_are_lifted_one_at_a_time() -> None:
    kit = OnePlate((1.25, 5, 10))
    loads = [kit.at_most(1), kit.at_most(9), kit.above(5), kit.above(10)]
    assert [built and built.load for built in loads] == [None, 5, 10, None]


def test_every_exercise_has_a_kit_exactly_where_it_has_a_load_in_both_units() -> None:
    for unit in ("kg", "lb"):
        evaluated = week({}, (SQUAT, (6, 8), 2), client={"unit": unit})
        day = evaluated.resolved.days[0]
        for exercise in CATALOGUE.exercises.values():
            kit = kit_on(exercise, evaluated.resolved, day)
            assert (kit is None) == (exercise.load in ("bodyweight", "band")), exercise.id
            heavy = kit and kit.at_most(500)
            assert kit is None or (heavy is not None and heavy.load > 0)


def test_every_lift_with_a_belt_adds_to_the_body_and_no_machine_that_helps_does() -> None:
    added = {e.id for e in CATALOGUE.exercises.values() if adds_to_the_body(e)}
    assert {e.id for e in CATALOGUE.exercises.values() if "dip-belt" in e.needs} < added
    assert {"loaded-push-up", "loaded-back-extension"} < added
    helped = {e.id for e in CATALOGUE.exercises.values() if e.body_weight == "helped"}
    assert helped == {e.id for e in CATALOGUE.exercises.values() if "assisted-pull-up" in e.needs}


def test_the_load_of_a_machine_that_helps_is_not_reckoned() -> None:
    """By the formulas fewer repetitions are heavier: on such a machine more load is easier."""
    lift = "assisted-pull-up"
    evaluated = week({lift: {"load": 40, "reps": 12}}, (lift, (5, 8), 2))
    assert [load.known for load in week_loads(evaluated).values()] == [False]


# ---- plates


@pytest.mark.parametrize(
    ("owned", "said"),
    [
        ({"bar": 20, "plates": [20, 10, 5, 2.5, 1.25]}, "20 + 10 + 5 + 2.5 a side"),
        ({"bar": 15, "plates": [20, 10, 10, 5]}, "20 + 10 + 10 a side"),
        ({"bar": 20}, ""),
        ({"plates": [20, 10, 5, 2.5, 1.25]}, ""),
        ({}, ""),
    ],
)
def test_plates_are_said_where_bar_and_plates_are(owned: dict[str, Any], said: str) -> None:
    """A bar of 20 kg with 37.5 kg a side is 95 kg, one of 15 kg with 40 kg a side as well."""
    assert said_loads(week({SQUAT: "100x5, 2 left"}, (SQUAT, (6, 8), 2), owned=owned))[0, 0].plates == said


def test_plates_of_a_machine_need_no_bar_and_those_on_one_end_have_no_side() -> None:
    plates = {"plates": [20, 20, 10, 10, 5]}
    machine = said_loads(week({"hack-squat": "100x10"}, ("hack-squat", (10, 12), 2), owned=plates))[0, 0]
    assert machine.load == "90 kg" and machine.plates == "20 + 20 + 5 a side"
    belt = said_loads(week({"loaded-pull-up": "25x8"}, ("loaded-pull-up", (6, 8), 2), owned=plates))[0, 0]
    assert belt.load == "25 kg added" and belt.plates == "20 + 5"


def test_neither_a_curl_bar_nor_dumbbells_have_plates() -> None:
    owned = {"bar": 20, "plates": [20, 10, 5, 2.5]}
    lifts = {"curl-bar-curl": "30x10", BENCH: "20x10"}
    found = said_loads(week(lifts, ("curl-bar-curl", (8, 12), 2), (BENCH, (8, 12), 2), owned=owned))
    assert [said.plates for said in found.values()] == ["", ""]
    assert all(said.load.endswith(("kg", "dumbbell")) for said in found.values())
