"""Phrases as clients and coaches write them: themes in turn, muscles by days, ranges, places left open."""

from __future__ import annotations

import io
from typing import Any

import pytest

from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.brief.schema import Brief

CATALOGUE = load_catalogue()


def read(phrase: str) -> Brief:
    return read_brief(phrase, CATALOGUE, io.BytesIO(b"")).brief


@pytest.mark.parametrize(
    ("phrase", "themes"),
    [
        ("6 days x 45 min, push pull legs", ["push", "pull", "lower"] * 2),
        ("6 x 45 min push pull legs", ["push", "pull", "lower"] * 2),
        ("4 days upper lower 45 min", ["upper", "lower"] * 2),
        ("40 min mon legs", ["lower"]),
        ("6 x 45 min, push/pull/legs", ["push", "pull", "lower"] * 2),
        ("3 x 45 min, ppl split", ["push", "pull", "lower"]),
        ("4 days x 45 min, upper lower", ["upper", "lower"] * 2),
        ("mon tue thu fri 45 min, upper/lower split", ["upper", "lower"] * 2),
        ("3 days x 40 min, full body", ["full-body"] * 3),
        ("fri 60 min legs, mon 40 min arms", ["arms", "lower"]),
        ("mon leg day 60 min, thu upper 60 min", ["lower", "upper"]),
    ],
)
def test_themes_that_days_take_in_turn(phrase: str, themes: list[str]) -> None:
    assert [day.focus for day in read(phrase).days] == themes


@pytest.mark.parametrize(
    ("phrase", "minutes"),
    [
        ("weekdays 30 min", [30] * 5),
        ("4 days, 1h15 each, hypertrophy", [75] * 4),
        ("40 min x 3", [40] * 3),
        ("3 days x max 40 min", [40] * 3),
        ("2 days x up to 50 min", [50] * 2),
        ("i can train 3 days x about 40 min", [40] * 3),
        ("train 3 days per week for 40 minutes", [40] * 3),
        ("4x/wk 60min", [60] * 4),
        ("2 x 45'", [45] * 2),
        ("mon, wed, fri: 40 min", [40] * 3),
    ],
)
def test_minutes_of_days(phrase: str, minutes: list[int]) -> None:
    assert [day.minutes for day in read(phrase).days] == minutes


@pytest.mark.parametrize(
    ("words", "muscles"),
    [
        ("chest twice a week", {"chest": (None, 2)}),
        ("calves 3x a week", {"calves": (None, 3)}),
        ("glutes and hamstrings focus", {"glutes": ("priority", None), "hamstrings": ("priority", None)}),
        ("chest focus, no calves", {"chest": ("priority", None), "calves": ("none", None)}),
        ("for bigger shoulders", {"delts": ("priority", None)}),
        ("wider shoulders", {"delts": ("priority", None)}),
        ("lagging calves, weak point chest", {"calves": ("priority", None), "chest": ("priority", None)}),
        ("emphasis on glutes", {"glutes": ("priority", None)}),
        ("more arms", {"arms": ("priority", None)}),
    ],
)
def test_what_is_asked_of_a_muscle(words: str, muscles: dict[str, Any]) -> None:
    found = {m: (ask.emphasis, ask.days_at_least) for m, ask in read(f"3 x 40 min, {words}").muscles.items()}
    assert {
        m: (e if "emphasis" in read(f"3 x 40 min, {words}").muscles[m].model_fields_set else None, d)
        for m, (e, d) in found.items()
    } == muscles


@pytest.mark.parametrize(
    ("words", "field", "value"),
    [
        ("I am a beginner", "client.experience", "novice"),
        ("I'm 58", "client.age", 58),
        ("time efficient", "goal", "efficiency"),
        ("superset everything", "pairs", True),
        ("dumbbells only", "equipment", "home-dumbbells"),
        ("20 kg dumbbells", "owned.dumbbell_max", 20.0),
        ("maximum growth", "goal", "growth"),
    ],
)
def test_one_word_for_one_field(words: str, field: str, value: object) -> None:
    brief: Any = read(f"3 x 40 min, {words}")
    for name in field.split("."):
        brief = getattr(brief, name)
    assert brief == value


def test_two_bad_joints_are_two_cautions() -> None:
    for words in ("bad knee and shoulder", "sore elbow and wrist", "bad knee"):
        found = [caution.tag for caution in read(f"3 x 40 min, {words}").client.cautions]
        assert found == [word for word in words.split() if word not in ("bad", "sore", "and")]


def test_what_is_hated_is_disliked_and_what_is_to_be_left_out_is_avoided() -> None:
    assert "dumbbell-walking-lunge" in read("3 x 40 min, hates lunges").dislike
    assert "barbell-deadlift" in read("3 x 40 min, without deadlifts").avoid
    assert read("3 x 40 min, without barbell").without == ("barbell",)


@pytest.mark.parametrize(
    ("phrase", "said"),
    [
        ("3 x 40 min at home or gym", "'at home or gym' leaves open which place it is"),
        ("3 x 40 min, hotel gym or commercial gym", "leaves open which place it is"),
        ("4 days x 45 min, push pull legs", "'push pull legs' is 3 themes in turn, and there are 4 days"),
        ("mon upper 40 min, thu lower 40 min, upper lower", "is said beside a day's own theme"),
        ("45 min every other day", "is three days in one week and four in the next"),
        ("3 x 40 min, get stronger", "'get stronger' is not what these weeks are for"),
        ("3 days x 30-45 min", "'30-45 min' is a range, and a day has one length"),
    ],
)
def test_what_is_open_is_asked(phrase: str, said: str) -> None:
    with pytest.raises(UsageFault) as caught:
        read(phrase)
    assert said in str(caught.value)


def test_dumbbells_or_bands_are_both() -> None:
    assert read("3 x 40 min, dumbbells or bands").equipment == ("dumbbell", "band")


def test_sets_before_their_muscle() -> None:
    for words in ("12 sets of back per week", "back 12 sets", "at least 12 sets for back"):
        ask = read(f"3 x 40 min, {words}").muscles["back"]
        assert ask.at_least == 12


def test_the_rest_is_held_and_what_is_named_is_not() -> None:
    for words in ("grow delts, hold the rest", "hold everything else, grow delts"):
        muscles = read(f"3 x 40 min, {words}").muscles
        assert muscles["delts"].emphasis == "priority"
        assert muscles["chest"].emphasis == muscles["quads"].emphasis == "hold"
        assert not {"side-delts", "rear-delts", "front-delts", "obliques"} & set(muscles)


def test_what_cannot_be_done_is_avoided() -> None:
    assert "pull-up" in read("3 x 40 min, cannot do pull-ups").avoid
    assert "pull-up" in read("3 x 40 min, can't do pull-ups").avoid
    assert "dumbbell-walking-lunge" in read("3 x 40 min, doesn't like lunges").dislike


def test_a_sport_on_two_days() -> None:
    found = [(other.name, other.weekday) for other in read("3 x 40 min, sport football on tue, thu").other]
    assert found == [("football", "tue"), ("football", "thu")]
    apart = read("sport football on tue, thu 40 min")
    assert [day.weekday for day in apart.days] == ["thu"] and len(apart.other) == 1
