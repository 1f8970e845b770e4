"""A solved season: its dates, turns and sets, and the weeks that `setwright week` plans by its briefs."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from io import StringIO
from itertools import pairwise

import pytest
from light_search import LIGHT

from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.file import read_brief
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.planning import Solved, plan
from setwright.solver.rulebook import RULES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.sheets.common.season_words import block_words
from setwright.solver.sheets.plain.brief_toml import brief_toml
from setwright.solver.sheets.screen.over_time.season import season_text
from setwright.solver.uses.season.season import Season, SeasonBlock
from setwright.solver.uses.season.turns import turns_of

pytestmark = pytest.mark.slow
MEAN_APART, MOST_APART, SUM_APART = 2.5, 7.0, 0.15
"""How near a planned week is to its block: sets a muscle on average, at most, and the share of all sets."""


def test_blocks_are_whole_weeks_in_a_row_and_none_holds_a_day_off(short_sessions: Season) -> None:
    blocks = short_sessions.blocks
    assert blocks
    for block in blocks:
        assert 4 <= len(block.weeks) <= 7 and len(block.by_week) == len(block.weeks)
        assert (block.last - block.first).days == 7 * len(block.weeks) - 1
        assert (block.last - block.lighter).days == 6
        assert all(week.days for week in block.weeks)
        assert block.minutes == min(week.minutes for week in block.weeks[:-1])
    assert all(before.last < after.first for before, after in pairwise(blocks))
    inside = sum(len(block.weeks) for block in blocks)
    assert inside + len(short_sessions.between) == len(short_sessions.weeks)


def test_what_is_wanted_has_its_turn_and_what_the_brief_holds_is_held(short_sessions: Season) -> None:
    assert short_sessions.turns == {"side-delts": 0, "rear-delts": 0, "quads": 1}
    assert short_sessions.missed == ()
    for block in short_sessions.blocks:
        assert set(block.specialised) <= set(short_sessions.turns)
        assert block.emphases["calves"] == "hold"
    for muscle in short_sessions.turns:
        marks = "".join("x" if muscle in block.specialised else "." for block in short_sessions.blocks)
        assert "xxx" not in marks


def test_sets_rise_no_faster_than_they_may(short_sessions: Season) -> None:
    before: SeasonBlock | None = None
    for block in short_sessions.blocks:
        for muscle in block.sets:
            full = [week[muscle] for week in block.by_week[:-1]]
            assert all(later <= earlier + 2 for earlier, later in pairwise(full))
            if before is not None:
                assert full[0] <= before.by_week[-2][muscle] + 4
            assert block.by_week[-1][muscle] <= full[-1] / 2 + 0.25
        before = block


def test_what_is_below_its_band_is_named(short_sessions: Season) -> None:
    text = season_text(short_sessions)
    defaults = load_catalogue().defaults
    short = False
    for block in short_sessions.blocks:
        for muscle, sets in block.sets.items():
            low = defaults.bands["balanced"][block.emphases[muscle]][0]
            if sets < low:
                short = True
                assert (muscle, sets, low) in short_sessions.below_band(block)
    assert ("Below the band of their emphasis" in text) is short


def test_the_bound_is_proven_and_near(short_sessions: Season) -> None:
    assert 0 <= short_sessions.gap_share < 0.08
    assert short_sessions.worth <= short_sessions.bound


def test_the_words_of_a_block_are_read_as_its_emphases(short_sessions: Season) -> None:
    catalogue = load_catalogue()
    for block in short_sessions.blocks:
        read = read_brief(block_words(block, catalogue), catalogue, StringIO(), tuple(RULES)).brief
        asked = {m: ask.emphasis for m, ask in expand_muscles(read, catalogue).items() if ask.emphasis != "normal"}
        wanted = dict.fromkeys(block.specialised, "priority") | dict.fromkeys(block.held, "hold")
        assert asked == wanted
        assert [(d.weekday, d.minutes) for d in read.days] == [(d.weekday, d.minutes) for d in block.days]


def test_the_brief_of_a_block_is_read_back_from_its_file(short_sessions: Season) -> None:
    for block in short_sessions.blocks:
        raw = tomllib.loads(brief_toml(block.brief.brief, "A block.").decode())
        assert parse_brief(raw, load_catalogue(), "test", tuple(RULES)).brief == block.brief.brief


def test_a_brief_of_many_fields_is_read_back_from_its_file() -> None:
    raw = {
        "title": 'A "quoted" \\ title, \u00e9\x7f',
        "days": [{"weekday": "tue", "minutes": 40, "equipment": ["dumbbell", "bench"]}],
        "muscles": {"quads": {"emphasis": "priority", "at_least": 6.5}},
        "pins": [{"exercise": "dumbbell-curl", "sets": 2}],
        "rules": {"third-day": "off", "distinct": 0.5},
        "client": {"cautions": [{"tag": "wrist", "on": "2026-01-05"}], "trains_alone": True},
        "clock": {"warm_up": 300},
    }
    brief = parse_brief(raw, load_catalogue(), "test", tuple(RULES)).brief
    again = tomllib.loads(brief_toml(brief).decode())
    assert parse_brief(again, load_catalogue(), "test", tuple(RULES)).brief == brief


def test_the_brief_of_each_block_plans_a_clean_week_with_nearly_its_sets(short_sessions: Season) -> None:
    options = SolveOptions(replace(LIGHT, nodes=0), pairs_note=False)
    planned: set[str] = set()
    for block in short_sessions.blocks:
        words = block_words(block, short_sessions.catalogue)
        if words in planned:
            continue
        planned.add(words)
        end = plan(block.brief, short_sessions.catalogue, options)
        assert isinstance(end, Solved)
        again = audit(end.resolved, end.audit.evaluated.week)
        assert again.broken == ()
        sets = {muscle: again.evaluated.weekly_sets(muscle) / 10_000 for muscle in block.sets}
        apart = {muscle: abs(block.sets[muscle] - sets[muscle]) for muscle in sets}
        assert sum(apart.values()) / len(apart) <= MEAN_APART, (words, apart)
        assert max(apart.values()) <= MOST_APART, (words, apart)
        assert sum(block.sets.values()) == pytest.approx(sum(sets.values()), rel=SUM_APART)


@pytest.mark.parametrize(
    ("phrase", "words", "said"),
    [
        ("2 days x 30 min", ("qauds", "delts"), "did you mean 'quads'?"),
        ("2 days x 30 min, hold quads", ("quads",), "quads is at hold in the brief"),
        ("2 days x 30 min, no calves", ("calves",), "calves is at none in the brief"),
        ("2 days x 30 min, minimum dose", (), "minimum dose"),
    ],
)
def test_turns_that_make_no_sense_are_refused(phrase: str, words: tuple[str, ...], said: str) -> None:
    brief = read_brief(phrase, load_catalogue(), StringIO(), tuple(RULES)).brief
    with pytest.raises(UsageFault, match=said.replace("?", r"\?")):
        turns_of(brief, words, load_catalogue())


def test_without_a_word_the_priorities_take_turns_and_else_all_that_is_trained() -> None:
    catalogue = load_catalogue()
    first = read_brief("2 days x 30 min, grow glutes, hold calves", catalogue, StringIO(), tuple(RULES)).brief
    assert turns_of(first, (), catalogue) == {"glutes": 0}
    second = read_brief("2 days x 30 min, hold calves", catalogue, StringIO(), tuple(RULES)).brief
    sought = {m.id for m in catalogue.muscles.values() if m.size != "minor"} - {"calves"}
    assert turns_of(second, (), catalogue) == dict.fromkeys(sorted(sought, key=list(catalogue.muscles).index), 0)
