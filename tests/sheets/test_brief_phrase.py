"""A brief said as a phrase is read as the same brief again; what no phrase can hold is named."""

from __future__ import annotations

import random
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.file import parse_phrase, read_brief
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.sheets.plain.brief_phrase import brief_phrase

SCENARIOS = sorted((Path(__file__).parents[2] / "scenarios").glob("*.toml"))
FOCUS = (None, None, "full-body", "upper", "lower", "push", "pull", "arms")


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return load_catalogue()


def anyhow(choice: random.Random, catalogue: Catalogue) -> dict[str, Any]:
    """A raw brief of fields that a phrase has words for."""

    def some(names: Iterable[str], most: int) -> list[str]:
        return choice.sample(sorted(names), choice.randint(0, most))

    weekdays = sorted(choice.sample(WEEKDAYS, choice.randint(1, 4)), key=WEEKDAYS.index)
    any_order = choice.random() < 0.2
    own_place = choice.random() < 0.2 and not any_order
    days: list[dict[str, Any]] = [
        {"minutes": choice.choice((30, 40, 45, 75)), "focus": choice.choice(FOCUS)} for _ in weekdays
    ]
    for day, weekday in zip(days, weekdays, strict=True):
        day |= {} if any_order else {"weekday": weekday}
        day |= {"equipment": choice.choice(sorted(catalogue.kits))} if own_place else {}
    muscles: dict[str, Any] = {}
    for muscle in some(catalogue.muscles, 3):
        muscles[muscle] = {"emphasis": choice.choice(("priority", "normal", "hold"))}
        if choice.random() < 0.4:
            low = choice.choice((None, 4, 6.5))
            muscles[muscle] |= {
                "at_least": low,
                "at_most": choice.choice((low, 12)),
                "days_at_least": choice.choice((None, 1)),
            }
    lifts, items = sorted(catalogue.exercises), sorted(catalogue.items)
    brief: dict[str, Any] = {
        "days": [{key: value for key, value in day.items() if value} for day in days],
        "any_order": any_order,
        "muscles": {name: {k: v for k, v in ask.items() if v is not None} for name, ask in muscles.items()},
        "goal": choice.choice(("growth", "efficiency", "balanced")),
        "avoid": some(lifts, 6),
        "dislike": some(set(lifts) - {"machine-hip-thrust"}, 5),
        "like": some(lifts, 2),
        "without": some(set(items) - {"body", "band", "dumbbell"}, 1),
        "reps": choice.choice(("lower", "usual", "higher")),
        "client": {
            "experience": choice.choice(("novice", "intermediate", "advanced")),
            "unit": choice.choice(("kg", "lb")),
            "trains_alone": choice.random() < 0.3,
        },
        "owned": {"busy": choice.random() < 0.2},
        "clock": {"warm_up": 300} if choice.random() < 0.3 else {},
    }
    brief["like"] = [lift for lift in brief["like"] if lift not in (*brief["avoid"], *brief["dislike"])]
    brief["dislike"] = [lift for lift in brief["dislike"] if lift not in brief["avoid"]]
    if not own_place:
        brief["equipment"] = choice.choice(sorted(catalogue.kits))
    for field, value in (("pairs", choice.choice((True, False))), ("keep_share", 0.95), ("techniques", False)):
        if choice.random() < 0.3:
            brief[field] = value
    if choice.random() < 0.3:
        brief["client"]["age"] = choice.randint(18, 80)
    if choice.random() < 0.3:
        brief["client"]["cautions"] = [{"tag": choice.choice(sorted(catalogue.cautions))}]
    if choice.random() < 0.3:
        brief["rules"] = {"third-day": choice.choice(("off", "hard", 2.5))}
    if choice.random() < 0.4:
        brief["rest_at_least"] = choice.choice((45, 60, 90))
    if choice.random() < 0.4:
        brief["rest_at_most"] = choice.choice((90, 120, 180))
    if choice.random() < 0.4:
        brief["rir_at_least"] = choice.randint(1, 5)
    if choice.random() < 0.3:
        brief["clock"]["seconds_per_rep"] = choice.choice((2.5, 4, 6.25))
    if not any_order and choice.random() < 0.4:
        names = [*sorted(catalogue.groups), *sorted(catalogue.muscles)]
        named = choice.choice(names)
        away = choice.choice([n for n in names if not catalogue.muscles_of(named) <= catalogue.muscles_of(n)])
        for day in choice.sample(brief["days"], choice.randint(1, len(weekdays))):
            day["trained"] = [named]
        choice.choice(brief["days"])["rested"] = [away]
    if any_order:
        brief["rest_days_between"] = choice.choice((0, 1, 2)) if len(days) < 3 else 1
    return brief


@pytest.mark.parametrize("seed", range(120))
def test_a_phrase_is_read_as_the_brief_that_it_was_said_of(catalogue: Catalogue, seed: int) -> None:
    brief = parse_brief(anyhow(random.Random(seed), catalogue), catalogue).brief
    said = brief_phrase(brief, catalogue)
    assert said.left_out == (), said.text
    again = parse_phrase(said.text, catalogue).brief

    def plain(one: Any) -> dict[str, Any]:
        lists = {field: tuple(sorted(getattr(one, field))) for field in ("avoid", "dislike", "without", "like")}
        raw = dict(one.model_copy(update=lists).model_dump())
        if len({str(day["equipment"]) for day in raw["days"]}) == 1 and raw["days"][0]["equipment"]:
            raw["equipment"] = raw["days"][0]["equipment"]
            raw["days"] = tuple({**day, "equipment": None} for day in raw["days"])
        return raw

    assert plain(again) == plain(brief)


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda path: path.stem)
def test_what_a_phrase_leaves_out_of_a_scenario_is_named_and_all_else_comes_back(
    catalogue: Catalogue, path: Path
) -> None:
    brief = read_brief(str(path), catalogue, None).brief  # type: ignore[arg-type]
    said = brief_phrase(brief, catalogue)
    again = parse_phrase(said.text, catalogue).brief
    for field in type(brief).model_fields:
        parts = [name for name in said.left_out if name.split(".")[0] == field]
        if not parts and field not in ("avoid", "dislike", "without", "like"):
            assert getattr(again, field) == getattr(brief, field), (field, said.text)


@pytest.mark.parametrize(
    ("more", "left_out"),
    [
        ({"title": "Autumn"}, ("title",)),
        ({"lifts": {"barbell-back-squat": {"load": 100.0, "reps": 5}}}, ("lifts",)),
        ({"owned": {"plates": [20, 10]}}, ("owned.plates",)),
        ({"client": {"code": "K-7", "cautions": [{"tag": "knee", "said_by": "a physiotherapist"}]}},
         ("client.cautions", "client.code")),
        ({"client": {"clearance": {"by": "a doctor", "on": "2026-01-02"}}}, ("client.clearance",)),
        ({"clock": {"ramp_lower": 60, "spare": 120}}, ("clock.ramp_lower",)),
        ({"dose": "lighter"}, ("dose",)),
    ],
)  # fmt: skip
def test_what_no_phrase_can_hold_is_named(
    catalogue: Catalogue, more: dict[str, Any], left_out: tuple[str, ...]
) -> None:
    brief = parse_brief({"days": [{"minutes": 40}], **more}, catalogue).brief
    said = brief_phrase(brief, catalogue)
    assert said.left_out == left_out
    assert said.text.startswith("1 day x 40 min")


@pytest.mark.parametrize(
    ("phrase", "said"),
    [
        ("3x40, grow delts", "3 days x 40 min, grow delts"),
        ("mon thu push 45 min", "2 days push x 45 min"),
        ("mon tue push 45 min", "mon tue 45 min push"),
        ("3x40, no squats", "3 days x 40 min, avoid squat"),
        ("2x40 dumbbells to 24 kg by 2", "2 days x 40 min, with home dumbbells to 24 kg by 2"),
        ("3x40, pin plank on wed 3 sets", "3 days x 40 min, pin plank on wed 3 sets"),
        ("mon fri 60 min, sport football on tue", "mon fri 60 min, sport football on tue lower"),
    ],
)  # fmt: skip
def test_a_brief_is_said_as_a_coach_would(catalogue: Catalogue, phrase: str, said: str) -> None:
    assert brief_phrase(parse_phrase(phrase, catalogue).brief, catalogue).text == said


def test_weekdays_are_written_out_where_they_are_asked_for(catalogue: Catalogue) -> None:
    brief = parse_phrase("3x40", catalogue).brief
    assert brief_phrase(brief, catalogue, named=True).text == "mon wed fri 40 min"
