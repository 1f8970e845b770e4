"""`lifts` in a brief: sets and maxima in words or tables, names as everywhere, every fault at once."""

from __future__ import annotations

from typing import Any

import pytest
from jsonschema import Draft202012Validator

from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.brief.schema import Brief, LiftAsk
from setwright.solver.brief.schema_json import brief_schema

CATALOGUE = load_catalogue()
DAYS = [{"minutes": 40}, {"minutes": 40}]


def brief(lifts: Any, **more: Any) -> Brief:
    return parse_brief({"days": DAYS, "lifts": lifts, **more}, CATALOGUE).brief


def faults(lifts: Any, **more: Any) -> list[str]:
    with pytest.raises(UsageFault) as caught:
        brief(lifts, **more)
    return [str(fault) for fault in caught.value.faults]


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("80x8", LiftAsk(load=80, reps=8)),
        ("82.5 x 6", LiftAsk(load=82.5, reps=6)),
        ("82,5 kg x 6, 2 left", LiftAsk(load=82.5, reps=6, rir=2)),
        ("80 \N{MULTIPLICATION SIGN} 8 2 left", LiftAsk(load=80, reps=8, rir=2)),
        ("80x8 reps, none left", LiftAsk(load=80, reps=8, rir=0)),
        ("max 120", LiftAsk(maximum=120)),
        ("Maximum 120 kg", LiftAsk(maximum=120)),
        ({"maximum": 120}, LiftAsk(maximum=120)),
        ({"load": 80, "reps": 8, "rir": 2, "on": "2026-01-02"}, LiftAsk(load=80, reps=8, rir=2, on="2026-01-02")),
    ],
)
def test_a_set_or_a_maximum_in_words_or_as_a_table(said: Any, meant: LiftAsk) -> None:
    found = brief({"Bench press": said})
    assert found.lifts == {"barbell-bench-press": meant}
    assert parse_brief(raw_of(found), CATALOGUE).brief == found


def test_words_and_tables_fit_the_printed_schema() -> None:
    schema = Draft202012Validator(brief_schema())
    assert schema.is_valid({"days": DAYS, "lifts": {"squat": "80x8", "deadlift": {"maximum": 120}}})
    assert not schema.is_valid({"days": DAYS, "lifts": {"squat": 80}})
    assert not schema.is_valid({"days": DAYS, "lifts": {"squat": {"load": -80, "reps": 8}}})


def test_unsaid_lifts_are_no_part_of_the_written_brief() -> None:
    assert "lifts" not in raw_of(parse_brief({"days": DAYS}, CATALOGUE).brief)
    assert raw_of(brief({}))["lifts"] == {}


def test_every_fault_of_names_and_words_is_named_at_once() -> None:
    said = {
        "sqaut": "100x5",
        "row": "60x8",
        "bench press": "-80x8",
        "deadlift": {"load": -5, "reps": 3},
        "leg press": 4,
    }
    expected = "expected a set such as '80x8' or '80x8, 2 left', or a maximum such as 'max 120'"
    assert faults(said) == [
        "lifts.sqaut: 'sqaut' is not in the catalogue, expected an exercise; did you mean 'squat'?",
        "lifts.row: 'row' is a movement, expected an exercise",
        f"lifts.bench press: got '-80x8', {expected}",
        f"lifts.leg press: got 4, {expected}",
        "lifts.barbell-deadlift.load: got -5, expected 0.25 to 1500",
    ]


def test_every_fault_of_meaning_is_named_at_once() -> None:
    said = {
        "leg press": "100x40",
        "hack squat": {"load": 100, "reps": 33, "rir": 4},
        "push-up": "20x8",
        "farmers carry": "20x8",
        "dumbbell curl": {"load": 5},
        "squat": {"maximum": 100, "reps": 3},
        "deadlift": {},
    }
    found = faults(said, owned={"plates": [5] * 21})
    too_many = "expected fewer than 37 in all: no formula holds from there on"
    assert [fault.split(";")[0] for fault in found] == [
        f"lifts.leg-press: got 40 repetitions, {too_many}",
        f"lifts.hack-squat: got 33 repetitions with 4 left, {too_many}",
        "lifts.push-up: Push-up has no load in kg to choose",
        "lifts.dumbbell-farmers-carry: Dumbbell farmer's carry is held for a time, a load is reckoned from repetitions "
        "only",
        "lifts.dumbbell-curl: lacks reps, expected a set or a maximum",
        "lifts.barbell-back-squat: names a maximum and reps too",
        "lifts.barbell-deadlift: lacks load and reps, expected a set or a maximum",
        "owned.plates: got 21 pairs, expected 20 at most",
    ]
    assert all(";" in fault for fault in found)


def test_a_lift_is_named_once_and_in_the_clients_unit() -> None:
    assert faults({"squat": "100x5", "back squat": "90x5"}) == [
        "lifts.back squat: is 'barbell-back-squat' a second time; keep one of the two"
    ]
    assert faults({"squat": "225 lb x 5"}) == [
        "lifts.squat: got '225 lb x 5', the client's unit is kg; write it in kg, or say client.unit"
    ]
    assert brief({"squat": "225 lbs x 5"}, client={"unit": "lb"}).lifts == {
        "barbell-back-squat": LiftAsk(load=225, reps=5)
    }


def test_a_misspelt_field_is_named_with_the_nearest() -> None:
    assert faults({"squat": {"load": 100, "repz": 5}}) == [
        "lifts.barbell-back-squat.repz: is not a field of a brief; did you mean 'reps'?"
    ]


def test_plates_and_steps_are_used_where_lifts_are_said() -> None:
    owned = {"plates": [20, 10], "dumbbell_step": 2.5}
    said = [one.text for one in parse_brief({"days": DAYS, "lifts": {}, "owned": owned}, CATALOGUE).assumed]
    assert not any("not used" in text or "usual" in text for text in said)
    unsaid = [one.text for one in parse_brief({"days": DAYS, "lifts": {}}, CATALOGUE).assumed]
    assert "bars and plates: the usual ones in kg" in unsaid and "dumbbells: the usual steps in kg" in unsaid
