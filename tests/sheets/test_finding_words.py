"""Findings and wishes are said with the names of muscles, exercises and days, and every text has what it asks for."""

from __future__ import annotations

from string import Formatter

import pytest
from weeks import CATALOGUE, terms_of

from setwright.solver.evaluation.finding import Finding, Wish
from setwright.solver.linear.rule import Rule
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.findings import finding_words, wish_words

BRIEF = terms_of(days=[{"weekday": day, "minutes": 40} for day in ("mon", "tue")])
SAID = {
    "side delts: 1 set, band from 4": Finding("band-low", subject="side-delts", amount=1.0, limit=4.0),
    "no direct set for rear delts": Finding("direct-work", subject="rear-delts"),
    "Tuesday gives up 28 s of its warm-up": Finding("warm-up-given", amount=28, days=(1,)),
    "Tuesday: Chest-supported dumbbell row has 2 sets": Finding(
        "token-sets", amount=2, days=(1,), exercise="chest-supported-dumbbell-row"
    ),
    "Monday: lats has 15 sets, at most 14": Finding(
        "muscle-day-cap", subject="lats", amount=15.0, limit=14.0, days=(0,)
    ),
    "chest is trained hard on Monday and Tuesday": Finding("hard-days", subject="chest", days=(0, 1)),
    "Monday: Barbell curl rests 100 s, not one of 60, 90": Finding(
        "rest-range", amount=100, limit=(60, 90), days=(0,), exercise="barbell-curl"
    ),
    "Monday: Barbell curl has 6-8 repetitions, not 8-12": Finding(
        "repetitions", amount=(6, 8), limit=(8, 12), days=(0,), exercise="barbell-curl"
    ),
    "Monday: Barbell curl lacks barbell and plates": Finding(
        "equipment", days=(0,), exercise="barbell-curl", others=("barbell",)
    ),
}
WISHES = {
    "at least 5 sets of side delts": Wish("exact-band", "side-delts", 5),
    "2 sets of direct work for back on Monday": Wish("muscle-on-day", "back", 2, "mon"),
    "direct work for chest on 2 days": Wish("days-at-least", "chest", 2),
    "the movement vertical pull": Wish("must", "vertical-pull"),
    "Barbell curl pinned on Monday for 3 sets": Wish("pinned", "barbell-curl", 3, "mon"),
}


@pytest.mark.parametrize("words", SAID)
def test_a_finding_is_said_with_names(words: str) -> None:
    assert finding_words(SAID[words], BRIEF) == words


@pytest.mark.parametrize("words", WISHES)
def test_a_wish_is_said_as_a_coach_says_it(words: str) -> None:
    assert wish_words(WISHES[words], BRIEF) == words


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda r: r.id)
def test_every_text_asks_only_for_what_findings_have(rule: Rule) -> None:
    cases = [""] if isinstance(rule.says, str) else list(rule.says)
    for case in cases:
        finding = Finding(rule.id, case=case, amount=2, limit=3, days=(0, 1), exercise="barbell-curl")
        words = finding_words(finding, BRIEF)
        assert words and not any(name for _, name, _, _ in Formatter().parse(words) if name)


def test_a_session_without_a_weekday_is_called_by_its_number() -> None:
    brief = terms_of(days=[{"minutes": 40}, {"minutes": 40}], any_order=True)
    assert finding_words(Finding("main-lift", days=(1,)), brief) == "Session 2 has no main lift"


def test_the_catalogue_knows_every_exercise_named_here() -> None:
    assert {f.exercise for f in SAID.values() if f.exercise} <= set(CATALOGUE.exercises)
