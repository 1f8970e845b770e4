"""Concessions: each frees the brief, none is larger than it need be, and what they cost is told truly."""

from __future__ import annotations

import re

import pytest
from clashing import CATALOGUE, IMPOSSIBLE, clash_named, conceded_named

from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.linear.columns import instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.feasibility import possible
from setwright.solver.sheets.document.json_values import dumped
from setwright.solver.sheets.screen.clash import clash_document, clash_text
from setwright.solver.uses.relax.arithmetic import arithmetic
from setwright.solver.uses.relax.relaxations import MINUTE, Concession

TEN = "ten muscles at ten sets in two half hours"
NAMES = [pytest.param(name, marks=pytest.mark.slow) if name == TEN else name for name in IMPOSSIBLE]
EXPECTED = {
    "a vertical pull with dumbbells only": {"must"},
    "ten muscles at ten sets in two half hours": {"exact-band", "day-minutes"},
    "hard chest days on consecutive days": {"exact-band", "hard-days", "muscle-day-cap"},
    "two lifts of one bar as a pair": {"pinned"},
    "pins that the day cannot hold": {"pinned", "day-minutes"},
    "a taste made hard": {"must", "disliked"},
}


@pytest.mark.parametrize("name", IMPOSSIBLE)
def test_the_clash_names_what_clashes(name: str) -> None:
    assert {c.rule for c in clash_named(name).conflicts} <= EXPECTED[name]
    assert any(c.wish for c in clash_named(name).conflicts)


@pytest.mark.parametrize("name", NAMES)
def test_at_least_three_concessions_each_with_a_sound_week_of_its_brief(name: str) -> None:
    concessions = conceded_named(name).concessions
    assert len(concessions) >= (3 if name != "a taste made hard" else 2)
    for concession in concessions:
        brief = parse_brief(raw_of(concession.brief), CATALOGUE, "test").brief
        assert brief == concession.brief
        again = audit(resolve(brief, CATALOGUE), concession.audit.evaluated.week)
        assert not again.broken and again.stimulus == concession.audit.stimulus


@pytest.mark.parametrize("name", NAMES)
def test_they_are_ranked_and_the_best_week_costs_nothing(name: str) -> None:
    concessions = conceded_named(name).concessions
    weights = [round(c.weight, 4) for c in concessions]
    assert weights == sorted(weights)
    assert len({c.words for c in concessions}) == len(concessions)
    assert all(c.cost >= 0 and c.weight >= c.cost + MINUTE * c.minutes for c in concessions)


def with_words(name: str, pattern: str) -> Concession:
    return next(c for c in conceded_named(name).concessions if re.search(pattern, c.words))


def able(name: str, **changes: object) -> bool | None:
    raw = {**IMPOSSIBLE[name], **changes}
    return possible(instance_of(resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE))).able


def test_a_minute_less_is_too_little() -> None:
    name = "pins that the day cannot hold"
    given = with_words(name, "minutes? more").minutes
    assert given > 0
    assert able(name, days=[{"weekday": "mon", "minutes": 20 + given}])
    assert not able(name, days=[{"weekday": "mon", "minutes": 19 + given}])


def test_half_a_set_more_is_too_much() -> None:
    name = "hard chest days on consecutive days"
    end = 21.0 - with_words(name, "^at least").sets
    assert able(name, muscles={"chest": {"at_least": end, "days_at_least": 2}})
    assert not able(name, muscles={"chest": {"at_least": end + 0.5, "days_at_least": 2}})


def test_the_kit_that_would_do_is_named() -> None:
    """Bands are carried and a bar is hung; a pulldown machine is neither, so it comes after them or not at all."""
    name = "a vertical pull with dumbbells only"
    assert with_words(name, "add bands to the kit").kind == "kit"
    assert with_words(name, "add a pull-up bar to the kit").kind == "kit"


def test_days_apart_free_what_consecutive_days_cannot() -> None:
    assert with_words("hard chest days on consecutive days", "train on Monday and Thursday instead of Saturday")


def test_another_partner_than_the_one_on_the_same_bar() -> None:
    concession = with_words("two lifts of one bar as a pair", "drop the pin|without pairing")
    assert concession.kind == "pin"
    text = clash_text(clash_named("two lifts of one bar as a pair"), 80)
    assert "one bar cannot hold two loads" in text


def test_a_hundred_sets_are_said_in_one_line_of_arithmetic() -> None:
    """10 muscles x 10 sets = 100; 2 x 30 min less the shortest warm-ups of 2 min each = 56 min: worked by hand."""
    (line,) = arithmetic(clash_named(TEN).resolved)
    assert line.startswith("10 x 10 = 100 sets asked")
    assert line.endswith("after the warm-ups the week has 56.")
    way = re.search(r", (\d+) sets in ([\d.]+) min, which count as ([\d.]+) of those asked\)", line)
    took = re.search(r"takes (\d+) min", line)
    assert way and took and abs(100 / float(way[3]) * float(way[2]) - int(took[1])) <= 1
    assert took and int(took[1]) > 56


def test_a_brief_impossible_for_other_reasons_has_no_arithmetic() -> None:
    assert arithmetic(clash_named("a vertical pull with dumbbells only").resolved) == ()
    assert arithmetic(clash_named("a taste made hard").resolved) == ()


def test_pins_longer_than_their_day_are_added_up() -> None:
    (line,) = arithmetic(clash_named("pins that the day cannot hold").resolved)
    assert line.startswith("Monday: barbell back squat for 4 sets, barbell bench press for 4 sets take ")


@pytest.mark.parametrize("name", NAMES)
def test_the_concessions_stand_on_screen_and_in_the_document(name: str) -> None:
    clash, conceded = clash_named(name), conceded_named(name)
    text = clash_text(clash, 80, conceded)
    assert max(map(len, text.splitlines())) <= 80
    rows = clash_document(clash, conceded)["concessions"]
    assert [row["rank"] for row in rows] == list(range(1, len(conceded.concessions) + 1))
    for concession, row in zip(conceded.concessions, rows, strict=True):
        assert " ".join(concession.words.split()) in " ".join(text.split())
        assert row["words"] == concession.words
        assert parse_brief(row["brief"], CATALOGUE, "test").brief == concession.brief
    assert dumped(clash_document(clash, conceded))
