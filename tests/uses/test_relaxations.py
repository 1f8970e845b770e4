"""Relaxations: each frees the brief, none is larger than it need be, and what they cost is told truly."""

from __future__ import annotations

import pytest
from clashing import CATALOGUE, IMPOSSIBLE, clash_named, relaxations_named

from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.linear.instance import instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.feasibility import possible
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.screen.clash import clash_document, clash_text
from setwright.solver.sheets.screen.relaxation_words import relaxation_words, shortfall_words
from setwright.solver.uses.relax.brief_changes import (
    AddItems,
    AllowShorterRests,
    BriefChange,
    DropPartner,
    DropPins,
    LengthenSessions,
    LowerSets,
    MoveDays,
)
from setwright.solver.uses.relax.relaxation import Relaxation
from setwright.solver.uses.relax.relaxations import MINUTE
from setwright.solver.uses.relax.shortfalls import PinShortfall, TimeShortfall, shortfalls_of

TEN = "ten muscles at ten sets in two half hours"
NAMES = [pytest.param(name, marks=pytest.mark.slow) if name == TEN else name for name in IMPOSSIBLE]
EXPECTED = {
    "a vertical pull with dumbbells only": {"must"},
    "ten muscles at ten sets in two half hours": {"exact-band", "day-minutes"},
    "hard chest days on consecutive days": {"exact-band", "hard-days", "movement-once"},
    "two lifts of one bar as a pair": {"pinned"},
    "rests too long for the pins": {"pinned", "day-minutes"},
    "pins that the day cannot hold": {"pinned", "day-minutes"},
    "a muscle that nothing trains on its day": {"muscle-on-day"},
    "a taste made hard": {"must", "disliked"},
}


@pytest.mark.parametrize("name", IMPOSSIBLE)
def test_the_clash_names_what_clashes(name: str) -> None:
    assert {c.rule for c in clash_named(name).conflicts} <= EXPECTED[name]
    assert any(c.wish for c in clash_named(name).conflicts)


@pytest.mark.parametrize("name", NAMES)
def test_at_least_three_relaxations_each_with_a_sound_week_of_its_brief(name: str) -> None:
    ranked = relaxations_named(name).ranked
    assert len(ranked) >= (3 if name != "a taste made hard" else 2)
    for found in ranked:
        brief = parse_brief(raw_of(found.relaxation.brief), CATALOGUE, "test").brief
        assert brief == found.relaxation.brief
        again = audit(resolve(brief, CATALOGUE), found.audit.evaluated.week)
        assert not again.broken and again.stimulus == found.audit.stimulus


def test_long_rests_may_be_given_up() -> None:
    given_up = [r.relaxation.changes for r in relaxations_named("rests too long for the pins").ranked]
    assert (AllowShorterRests(300),) in given_up


@pytest.mark.parametrize("name", NAMES)
def test_they_are_ranked_and_the_best_week_costs_nothing(name: str) -> None:
    ranked = relaxations_named(name).ranked
    weights = [round(found.weight, 4) for found in ranked]
    assert weights == sorted(weights)
    assert len({found.relaxation.changes for found in ranked}) == len(ranked)
    assert min(found.cost for found in ranked) >= 0
    assert all(found.weight >= found.cost + MINUTE * found.relaxation.minutes for found in ranked)


def changing(name: str, *kinds: type[BriefChange]) -> Relaxation:
    """The first relaxation of one thing that changes the brief in one of these ways."""
    found = (r.relaxation for r in relaxations_named(name).ranked)
    return next(r for r in found if len(r.changes) == 1 and isinstance(r.changes[0], kinds))


def able(name: str, **changes: object) -> bool | None:
    raw = {**IMPOSSIBLE[name], **changes}
    return possible(instance_of(resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE))).able


def test_a_minute_less_is_too_little() -> None:
    name = "pins that the day cannot hold"
    given = changing(name, LengthenSessions).minutes
    assert given > 0
    assert able(name, days=[{"weekday": "mon", "minutes": 15 + given}])
    assert not able(name, days=[{"weekday": "mon", "minutes": 14 + given}])


def test_half_a_set_more_is_too_much() -> None:
    name = "hard chest days on consecutive days"
    end = 17.0 - changing(name, LowerSets).sets
    assert able(name, muscles={"chest": {"at_least": end, "days_at_least": 2}})
    assert not able(name, muscles={"chest": {"at_least": end + 0.5, "days_at_least": 2}})


def test_the_kit_that_would_do_is_named() -> None:
    """A bar is hung up; a machine with a counterweight and a cable are stations, and said to be. Bands alone would not
    do: they need something high to hang from."""
    found = [r.relaxation for r in relaxations_named("a vertical pull with dumbbells only").ranked]
    kits = {r.changes: r.kind for r in found if isinstance(r.changes[0], AddItems)}
    assert kits[(AddItems(("pull-up-bar",)),)] == "kit" and kits[(AddItems(("cable",)),)] == "station"
    assert (AddItems(("band",)),) not in kits


def test_days_apart_free_what_consecutive_days_cannot() -> None:
    found = changing("hard chest days on consecutive days", MoveDays)
    assert found.changes == (MoveDays(("mon", "thu"), ("sat", "sun")),)


def test_another_partner_than_the_one_on_the_same_bar() -> None:
    assert changing("two lifts of one bar as a pair", DropPins, DropPartner).kind == "pin"
    text = clash_text(clash_named("two lifts of one bar as a pair"), 80)
    assert "one bar cannot hold two loads" in text


def test_a_hundred_sets_are_said_in_one_line_of_arithmetic() -> None:
    """10 muscles x 10 sets = 100; 2 x 30 min less the shortest warm-ups, 2 min each, and the last rests, 1 min: 58."""
    resolved = clash_named(TEN).resolved
    (sums,) = shortfalls_of(resolved)
    assert isinstance(sums, TimeShortfall)
    assert sums.asked == (10.0,) * 10 and round(sums.available) == 58
    assert sums.needed == pytest.approx(100 / sums.counted * sums.set_minutes)
    assert sums.needed > 58
    said = shortfall_words(sums, resolved)
    assert said.startswith("10 x 10 = 100 sets asked for")
    assert said.endswith("after the warm-ups the week has 58.")


def test_a_brief_impossible_for_other_reasons_has_no_arithmetic() -> None:
    assert shortfalls_of(clash_named("a vertical pull with dumbbells only").resolved) == ()
    assert shortfalls_of(clash_named("a taste made hard").resolved) == ()


def test_pins_longer_than_their_day_are_added_up() -> None:
    resolved = clash_named("pins that the day cannot hold").resolved
    (sums,) = shortfalls_of(resolved)
    assert isinstance(sums, PinShortfall) and sums.needed > sums.available > 14
    said = shortfall_words(sums, resolved)
    assert said.startswith("Monday: barbell back squat for 4 sets and barbell bench press for 4 sets take ")


@pytest.mark.parametrize("name", NAMES)
def test_the_relaxations_stand_on_screen_and_in_the_document(name: str) -> None:
    clash, found = clash_named(name), relaxations_named(name)
    text = clash_text(clash, 80, found)
    assert max(map(len, text.splitlines())) <= 80
    rows = clash_document(clash, found)["concessions"]
    assert [row["rank"] for row in rows] == list(range(1, len(found.ranked) + 1))
    for one, row in zip(found.ranked, rows, strict=True):
        words = relaxation_words(one.relaxation, clash.resolved)
        assert words in " ".join(text.split())
        assert row["words"] == words
        assert parse_brief(row["brief"], CATALOGUE, "test").brief == one.relaxation.brief
    assert dumped(clash_document(clash, found))
