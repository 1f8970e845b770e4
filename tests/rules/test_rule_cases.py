"""Each rule on hand-made weeks: nothing to forbid, just inside, just outside; then turned off, made hard, re-priced."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

import pytest
from weeks import CATALOGUE, Days, audited, days, found, terms_of, week_of

from setwright.solver.auditing import audit
from setwright.solver.evaluation.prescriptions import reps_of, set_span
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import RULES
from setwright.solver.rules.priority_isolation import isolation_due

Lines = Days | Callable[[ResolvedBrief], Days]
FOUR = days("mon tue thu sat", 60)
NEXT = days("mon tue", 60)
ONE, TWO, THREE = (days(names, 60) for names in ("mon", "mon thu", "mon wed fri"))
EMPTY = ("", "")


@dataclass(frozen=True)
class Case:
    """One rule's three weeks under a brief; `idle` and `near` briefs replace it for the first two."""

    rule: str
    nothing: Lines
    inside: Lines
    outside: Lines
    brief: dict[str, Any] = field(default_factory=dict)
    idle: dict[str, Any] | None = None
    near: dict[str, Any] | None = None
    about: str = ""
    """The muscle, movement or region that the finding is about, where the rule has several."""
    day: int | None = None
    units: float = 1
    key: str | None = None
    sort: bool = True


def sets(name: str, rule: str, over: int = 0, key: str | None = None, share: float = 1, days_: int = 2) -> Lines:
    """So many sets of one exercise on the first day as the rule's limit says, and `over` more."""
    return lambda t: (f"{name} {int(t.limit(rule, key) / share) + over}", *[""] * (days_ - 1))


def several(names: str, rule: str, over: int, key: str | None = None, tail: str = "3") -> Lines:
    """As many of these exercises on the first day as the rule's limit says, and `over` more."""
    return lambda t: (", ".join(f"{n} {tail}" for n in names.split()[: round(t.limit(rule, key)) + over]), "")


def hard_curls(*over: int) -> Lines:
    """Curls on days that follow each other, so many sets above what a hard day begins after."""
    return lambda t: tuple(f"cable-curl {round(t.limit('hard-days', 'direct')) + n}" for n in over)


MANY = (
    "barbell-back-squat barbell-bench-press wide-grip-pulldown barbell-curl rope-pushdown leg-extension "
    "seated-leg-curl machine-side-raise cable-crunch standing-calf-raise"
)
DROPS = "cable-curl rope-pushdown machine-side-raise cable-fly leg-extension seated-leg-curl"
PRIORITY = {"muscles": {"biceps": "priority"}}
ODD = {"rules": {"repetitions": "off"}}

CASES = (
    # ---- what is open
    Case("equipment", EMPTY, ("dumbbell-curl 3", ""), ("cable-curl 3", ""), {"equipment": "home-dumbbells"}),
    Case(
        "stand-in",
        ("barbell-back-squat 3", ""),
        ("goblet-squat 3", ""),
        ("goblet-squat 3", ""),
        near={"equipment": ["dumbbell"]},
    ),
    Case(
        "close-press",
        ("dumbbell-bench-press 3", ""),
        ("close-grip-barbell-bench-press 3", ""),
        ("close-grip-barbell-bench-press 3", ""),
        near={"muscles": {"triceps": "priority"}},
    ),
    Case(
        "ability",
        ("wide-grip-pulldown 3", ""),
        ("pull-up 3", ""),
        ("pull-up 3", ""),
        {"client": {"experience": "novice"}},
        near={"client": {"experience": "intermediate"}},
    ),
    Case(
        "lone-lifter",
        ("barbell-row-to-hip 3", ""),
        ("barbell-bench-press 3", ""),
        ("barbell-bench-press 3", ""),
        {"equipment": "barbell-garage", "client": {"trains_alone": True}},
        near={"equipment": "barbell-garage", "client": {"trains_alone": True}, "owned": {"safeties": True}},
    ),
    Case("avoided", EMPTY, ("cable-curl 3", ""), ("barbell-curl 3", ""), {"avoid": ["barbell-curl"]}),
    Case(
        "missed-session",
        ("barbell-curl 3", "barbell-curl 3"),
        ("barbell-curl 3", ""),
        ("", "barbell-curl 3"),
        {"days": [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60, "missed": True}]},
        idle={},
    ),
    Case(
        "rested-muscle",
        ("overhead-cable-extension 3", ""),
        ("overhead-cable-extension 3", "machine-chest-press 3"),
        ("", "overhead-cable-extension 3"),
        {"days": [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60, "rested": ["triceps"]}]},
        idle={},
    ),
    Case(
        "rested-muscle-sets",
        ("machine-chest-press 5", ""),
        ("", "machine-chest-press 4"),
        ("", "machine-chest-press 5"),
        {"days": [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60, "rested": ["triceps"]}]},
        idle={},
    ),
    Case(
        "caution",
        EMPTY,
        ("machine-side-raise 3", ""),
        ("barbell-back-squat 3", ""),
        {"client": {"cautions": [{"tag": "knee"}]}},
    ),
    Case(
        "caution-position",
        ("lying-leg-curl 3", ""),
        ("seated-leg-curl 3", ""),
        ("lying-leg-curl 3", ""),
        {"client": {"cautions": [{"tag": "pregnancy"}]}},
        idle={},
    ),
    Case(
        "caution-effort",
        ("cable-curl 3 rir=1", ""),
        ("cable-curl 3 rir=3", ""),
        ("cable-curl 3 rir=2", ""),
        {"client": {"cautions": [{"tag": "high-blood-pressure"}]}},
        idle={},
    ),
    Case(
        "caution-repetitions",
        ("barbell-deadlift 3 reps=5-8", ""),
        ("barbell-deadlift 3 reps=8-10", ""),
        ("barbell-deadlift 3 reps=6-8", ""),
        {"client": {"cautions": [{"tag": "high-blood-pressure"}]}},
        idle={},
    ),
    Case(
        "caution-technique",
        ("cable-curl 3 drop", ""),
        ("cable-curl 3", ""),
        ("cable-curl 3 drop", ""),
        {"client": {"age": 15}},
        idle={},
    ),
    Case(
        "caution-rest",
        ("cable-curl 3 rest=60", ""),
        ("cable-curl 3 rest=90", ""),
        ("cable-curl 3 rest=75", ""),
        {"client": {"cautions": [{"tag": "high-blood-pressure"}]}},
        idle={},
    ),
    Case(
        "caution-sets",
        ("machine-chest-press 4", ""),
        ("machine-chest-press 3", ""),
        ("machine-chest-press 4", ""),
        {"client": {"cautions": [{"tag": "long-inactivity"}]}},
        idle={},
    ),
    Case(
        "reserve-asked",
        ("cable-curl 3 rir=1", ""),
        ("cable-curl 3 rir=2", ""),
        ("cable-curl 3 rir=1", ""),
        {"rir_at_least": 2},
        idle={},
    ),
    Case(
        "rest-asked",
        ("cable-curl 3 rest=90", ""),
        ("cable-curl 3 rest=60", ""),
        ("cable-curl 3 rest=90", ""),
        {"rest_at_most": 75},
        idle={},
    ),
    Case("muscle-none", EMPTY, ("barbell-row-to-hip 3", ""), ("barbell-curl 3", ""), {"muscles": {"biceps": "none"}}),
    Case(
        "day-focus",
        ("barbell-curl 3", ""),
        ("leg-press 3", ""),
        ("barbell-curl 3", ""),
        {"days": [{"weekday": "mon", "minutes": 60, "focus": "lower"}, {"weekday": "thu", "minutes": 60}]},
        idle={},
    ),
    Case(
        "other-activity",
        ("barbell-back-squat 3", ""),
        ("leg-extension 3", "barbell-back-squat 3"),
        ("barbell-back-squat 3", ""),
        {"other": [{"weekday": "tue", "regions": ["lower"]}]},
        idle={},
    ),
    Case(
        "each-side-rest",
        ("dumbbell-rear-foot-elevated-split-squat 3", ""),
        ("dumbbell-reverse-lunge 3", ""),
        ("dumbbell-rear-foot-elevated-split-squat 3", ""),
        {"goal": "efficiency"},
        idle={},
    ),
    # ---- how a lift is done
    Case("set-range", EMPTY, ("barbell-back-squat most, cable-curl least", ""), ("barbell-back-squat over", "")),
    Case("rest-range", EMPTY, ("barbell-back-squat 3 rest=most", ""), ("barbell-back-squat 3 rest=over", "")),
    Case("technique", ("cable-curl 3", ""), ("cable-curl 3 drop", ""), ("barbell-back-squat 3 drop", "")),
    Case("repetitions", EMPTY, ("cable-curl 3", ""), ("cable-curl 3 reps=5-5", "")),
    Case(
        "to-failure",
        ("cable-curl 3 rir=0", ""),
        ("barbell-back-squat 3 rir=1", ""),
        ("barbell-back-squat 3 rir=0", ""),
    ),
    Case("effort", EMPTY, ("cable-curl 3", ""), ("cable-curl 3 rir=over", "")),
    # ---- a day
    Case(
        "slot-once",
        EMPTY,
        ("barbell-bench-press 3, incline-dumbbell-press 3", ""),
        ("barbell-bench-press 3, dumbbell-bench-press 3", ""),
    ),
    Case(
        "movement-once",
        EMPTY,
        ("barbell-row-to-chest 3", "barbell-row-to-hip 3"),
        ("barbell-row-to-chest 3, barbell-row-to-hip 3", ""),
        {"days": days("mon thu", 45)},
    ),
    Case("exercise-count", EMPTY, several(MANY, "exercise-count", 0), several(MANY, "exercise-count", 1)),
    Case(
        "seventh",
        several(MANY, "seventh", 1, "exercises"),
        several(MANY, "seventh", 0, "exercises"),
        several(MANY, "seventh", 1, "exercises"),
        {"days": days("mon thu", 30)},
        idle={"days": days("mon thu", 31)},
    ),
    Case(
        "high-fatigue-sets",
        ("wide-grip-pulldown 20", ""),
        sets("barbell-bench-press", "high-fatigue-sets"),
        sets("barbell-bench-press", "high-fatigue-sets", 1),
    ),
    Case(
        "axial-load",
        ("leg-press 20", ""),
        sets("barbell-back-squat", "axial-load", share=2),
        sets("barbell-back-squat", "axial-load", 1, share=2),
    ),
    Case(
        "technique-cap",
        EMPTY,
        several(DROPS, "technique-cap", 0, tail="3 drop"),
        several(DROPS, "technique-cap", 1, tail="3 drop"),
    ),
    Case("muscle-day-cap", EMPTY, sets("barbell-curl", "muscle-day-cap"), sets("barbell-curl", "muscle-day-cap", 1)),
    Case(
        "muscle-day-cram",
        EMPTY,
        sets("cable-curl", "muscle-day-cram", 0, "sets"),
        sets("cable-curl", "muscle-day-cram", 1, "sets"),
    ),
    Case(
        "day-sets",
        EMPTY,
        sets("leg-press", "day-sets", 0, "intermediate"),
        sets("leg-press", "day-sets", 1, "intermediate"),
    ),
    Case(
        "novice-barbell",
        ("barbell-row-to-chest 3, barbell-row-to-hip 3, rack-inverted-row 3", ""),
        ("barbell-row-to-chest 3, barbell-row-to-hip 3", ""),
        ("barbell-row-to-chest 3, barbell-row-to-hip 3, rack-inverted-row 3", ""),
        {"client": {"experience": "novice"}},
        idle={},
    ),
    Case(
        "pair-fit",
        ("dumbbell-curl 3, dumbbell-overhead-extension 3", ""),
        (
            "dumbbell-curl 3 with=dumbbell-overhead-extension, dumbbell-overhead-extension 3 with=dumbbell-curl",
            "",
        ),
        ("dumbbell-curl 3 with=dumbbell-hammer-curl, dumbbell-hammer-curl 3 with=dumbbell-curl", ""),
        {"pairs": True},
    ),
    Case(
        "pair-walk",
        ("seated-leg-curl 3, leg-extension 3", ""),
        ("dumbbell-curl 3 with=dumbbell-overhead-extension, dumbbell-overhead-extension 3 with=dumbbell-curl", ""),
        ("seated-leg-curl 3 with=leg-extension, leg-extension 3 with=seated-leg-curl", ""),
        {"pairs": True},
    ),
    Case(
        "order",
        EMPTY,
        ("barbell-back-squat 3, cable-curl 3, cable-crunch 3", ""),
        ("cable-crunch 3, cable-curl 3, barbell-back-squat 3", ""),
        sort=False,
    ),
    # ---- what was asked for
    Case(
        "pinned",
        EMPTY,
        ("barbell-curl 3", ""),
        ("barbell-curl 2", "barbell-curl 3"),
        {"pins": [{"exercise": "barbell-curl", "day": "mon", "sets": 3}]},
        idle={},
    ),
    Case("must", EMPTY, ("", "pull-up 3"), ("barbell-row-to-hip 3", ""), {"must": ["vertical-pull"]}, idle={}),
    Case(
        "days-at-least",
        EMPTY,
        ("cable-curl 2", "cable-curl 2"),
        ("cable-curl 4", "barbell-row-to-hip 3"),
        {"muscles": {"biceps": {"days_at_least": 2}}},
        idle={},
    ),
    Case(
        "muscle-on-day",
        EMPTY,
        ("", "barbell-bench-press 2"),
        ("barbell-bench-press 3", "machine-shoulder-press 3"),
        {"days": [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60, "trained": ["chest"]}]},
        idle={},
    ),
    Case(
        "exact-band",
        EMPTY,
        ("cable-curl 3", "cable-curl 3"),
        ("cable-curl 3, barbell-row-to-hip 1", "cable-curl 3"),
        {"muscles": {"biceps": {"at_least": 6.0, "at_most": 6.0}}},
        idle={},
    ),
    Case(
        "band-low",
        EMPTY,
        lambda t: (f"machine-side-raise {round(t.muscles['side-delts'].low)}", ""),
        lambda t: (f"machine-side-raise {round(t.muscles['side-delts'].low) - 1}", ""),
        idle={"muscles": {"side-delts": "none"}},
        about="side-delts",
    ),
    Case(
        "band-top",
        lambda t: (f"barbell-romanian-deadlift {round(t.muscles['glutes'].high) + 1}", ""),
        lambda t: (f"cable-curl {round(t.muscles['biceps'].high)}", ""),
        lambda t: (f"cable-curl {round(t.muscles['biceps'].high)}, barbell-row-to-hip 1", ""),
    ),
    Case(
        "band-high",
        EMPTY,
        lambda t: (f"wide-grip-pulldown {2 * round(t.muscles['biceps'].high)}", ""),
        lambda t: (f"wide-grip-pulldown {2 * round(t.muscles['biceps'].high) + 2}", ""),
        about="biceps",
    ),
    Case(
        "priority-days",
        ("cable-curl 3", ""),
        ("cable-curl 3", "cable-curl 3"),
        ("cable-curl 3", "barbell-row-to-hip 3"),
        PRIORITY,
        idle={},
    ),
    Case(
        "hold-days",
        ("cable-curl 3", ""),
        ("cable-curl 3", "cable-curl 3"),
        ("cable-curl 3", ""),
        {"client": {"age": 60}, "muscles": {"biceps": "hold"}},
        idle={"client": {"age": 59}, "muscles": {"biceps": "hold"}},
        about="biceps",
    ),
    Case(
        "priority-variety",
        ("cable-curl 5", "cable-curl 5"),
        ("cable-curl 5", "cable-rope-hammer-curl 5"),
        ("cable-curl 5", "barbell-curl 5"),
        PRIORITY,
        idle={},
    ),
    Case(
        "priority-isolation",
        EMPTY,
        lambda t: (f"cable-curl {round(isolation_due(t, 'biceps'))}", ""),
        lambda t: (f"cable-curl {round(isolation_due(t, 'biceps')) - 1}, barbell-row-to-hip 8", ""),
        PRIORITY,
        idle={},
    ),
    Case("liked", EMPTY, ("cable-curl 3", ""), ("barbell-curl 3", ""), {"like": ["barbell-curl"]}, units=-1),
    Case("disliked", EMPTY, ("cable-curl 3", ""), ("barbell-curl 3", ""), {"dislike": ["barbell-curl"]}),
    # ---- the shape of a week
    Case(
        "coverage",
        EMPTY,
        ("", "barbell-row-to-hip 3"),
        ("wide-grip-pulldown 3", ""),
        idle={"muscles": {"upper-back": "none", "lats": "none"}},
        about="row",
    ),
    Case(
        "direct-work",
        EMPTY,
        ("standing-calf-raise 2", ""),
        ("seated-calf-raise 2", ""),
        idle={"muscles": {"calves": "none"}},
        about="calves",
    ),
    Case(
        "knee-flexion",
        EMPTY,
        ("seated-leg-curl 2", ""),
        ("barbell-romanian-deadlift 3", ""),
        idle={"muscles": {"hamstrings": "none"}},
    ),
    Case(
        "knee-extension",
        ("leg-press 3", ""),
        ("leg-extension 2", ""),
        ("barbell-back-squat 3", ""),
        {"muscles": {"quads": "priority"}},
        idle={},
    ),
    Case(
        "flat-press",
        EMPTY,
        ("", "parallel-bar-dip 3"),
        ("incline-dumbbell-press 3", ""),
        idle={"muscles": {"chest": "none"}},
    ),
    Case(
        "deadlift",
        EMPTY,
        ("barbell-deadlift 2", ""),
        ("barbell-romanian-deadlift 3", ""),
        {"equipment": "barbell-garage", "client": {"trains_alone": True}},
        idle={"equipment": "barbell-garage"},
    ),
    Case(
        "full-session",
        ("", "", "", ""),
        ("barbell-bench-press 3", "barbell-bench-press 3"),
        ("cable-fly 3", "barbell-bench-press 3"),
        idle={"days": FOUR},
        about="push",
        day=0,
    ),
    Case(
        "short-session",
        EMPTY,
        ("cable-fly 3, dumbbell-curl 3, leg-extension 3", ""),
        ("cable-fly 3, dumbbell-curl 3", "cable-fly 3, dumbbell-curl 3, leg-extension 3"),
        idle={"days": [{"weekday": "mon", "minutes": 25}, {"weekday": "thu", "minutes": 25}]},
        day=0,
    ),
    Case(
        "main-lift",
        EMPTY,
        ("barbell-bench-press 3", ""),
        ("machine-chest-press 3", "barbell-bench-press 3"),
        idle={"goal": "efficiency"},
        day=0,
    ),
    Case(
        "region-main-lift",
        EMPTY,
        ("", "barbell-bench-press 3"),
        ("machine-chest-press 3", "barbell-back-squat 3"),
        idle={"goal": "efficiency"},
        about="push",
    ),
    Case(
        "theme",
        ("leg-press 3", "leg-press 3"),
        ("cable-curl 3", "leg-extension 3", "", ""),
        ("leg-press 3", "leg-extension 3", "leg-press 3", ""),
        {"days": FOUR},
        idle={},
        units=2,
    ),
    Case(
        "region-days",
        EMPTY,
        ("leg-press 3", "", "leg-press 3", ""),
        ("leg-press 3", "leg-extension 3", "", ""),
        {"days": FOUR},
        idle={},
        about="lower",
    ),
    Case(
        "fourth-region-day",
        ("", "", "", ""),
        ("leg-press 3", "barbell-back-squat 3", "leg-press 3", ""),
        ("leg-press 3", "barbell-back-squat 3", "leg-press 3", "barbell-back-squat 3"),
        {"days": FOUR},
    ),
    Case(
        "region-consecutive",
        ("leg-press 3", "leg-press 3"),
        ("leg-press 3", "cable-curl 3", "leg-press 3", "cable-curl 3"),
        ("leg-press 3", "barbell-back-squat 3", "", ""),
        {"days": FOUR},
        idle={"days": NEXT},
    ),
    Case(
        "hinge-over-knee",
        ("barbell-romanian-deadlift 3", ""),
        ("barbell-romanian-deadlift 3", "leg-press 3"),
        ("barbell-romanian-deadlift 3", "leg-extension 3"),
        idle={"muscles": {"quads": "none"}},
    ),
    Case(
        "pull-push",
        ("barbell-bench-press 3", ""),
        ("barbell-bench-press 3", "barbell-row-to-hip 3"),
        ("barbell-bench-press 4", "barbell-row-to-hip 3, straight-arm-cable-pulldown 3"),
        idle={"muscles": {"upper-back": "none", "lats": "none"}},
    ),
    Case(
        "flat-overhead",
        ("barbell-overhead-press 3", ""),
        ("barbell-overhead-press 3", "dumbbell-bench-press 3"),
        ("barbell-overhead-press 4", "dumbbell-bench-press 3"),
        idle={"muscles": {"front-delts": "priority"}},
    ),
    Case(
        "hard-days",
        hard_curls(1, 1),
        hard_curls(1, 0),
        hard_curls(1, 1),
        {"days": NEXT},
        idle={},
        about="biceps",
    ),
    Case(
        "axial-consecutive",
        ("barbell-back-squat 3", "barbell-romanian-deadlift 3"),
        ("barbell-back-squat 3", "barbell-row-to-hip 3"),
        ("barbell-back-squat 3", "barbell-romanian-deadlift 3"),
        {"days": NEXT},
        idle={},
    ),
    Case(
        "exercise-days",
        ("", "", "", ""),
        ("cable-curl 2", "cable-curl 2", "cable-curl 2", "barbell-deadlift 2"),
        ("cable-curl 2", "cable-curl 2", "cable-curl 2", "cable-curl 2"),
        {"days": FOUR},
    ),
    Case(
        "third-day",
        ("", "", "", ""),
        ("cable-curl 2", "cable-curl 2", "barbell-curl 2", "barbell-curl 2"),
        ("cable-curl 2", "cable-curl 2", "cable-curl 2", "barbell-curl 2"),
        {"days": FOUR},
    ),
    Case(
        "week-sets",
        EMPTY,
        sets("cable-curl", "week-sets", 0, "intermediate"),
        sets("cable-curl", "week-sets", 1, "intermediate"),
    ),
    Case(
        "day-share",
        ("barbell-back-squat 4, cable-curl 4", ""),
        ("barbell-back-squat 4", "barbell-back-squat 4"),
        ("barbell-back-squat 4, cable-curl 4", ""),
        {"goal": "efficiency"},
        idle={},
    ),
    # ---- the card
    Case(
        "second-choice",
        ("smith-squat 3", ""),
        ("barbell-back-squat 3", ""),
        ("smith-squat 3", ""),
        idle={"equipment": ["smith"]},
    ),
    Case(
        "loadable",
        ("slow-bodyweight-squat 3", ""),
        ("pull-up 3", "leg-press 3"),
        ("slow-bodyweight-squat 3", ""),
        idle={"equipment": "bodyweight-and-bands"},
    ),
    Case(
        "split-squat-second",
        ("dumbbell-split-squat 3", ""),
        ("barbell-back-squat 3, dumbbell-split-squat 3", ""),
        ("dumbbell-split-squat 3", "barbell-back-squat 3"),
        idle={"equipment": "home-dumbbells"},
    ),
    Case(
        "hinge-and-row",
        ("barbell-row-to-chest 3", ""),
        ("barbell-romanian-deadlift 3, chest-supported-dumbbell-row 3", "barbell-row-to-chest 3"),
        ("barbell-romanian-deadlift 3, barbell-row-to-chest 3", ""),
    ),
    Case(
        "token-sets",
        ("leg-press 2", "leg-press 2"),
        ("leg-press 3", "cable-curl 2"),
        ("leg-press 2", "leg-press 3"),
        idle={"goal": "efficiency"},
    ),
    Case("fourth-set", EMPTY, ("leg-press 4", "cable-curl 3"), ("cable-curl 4", "")),
    Case("fifth-set", EMPTY, ("leg-press 4", ""), ("leg-press 5", "")),
    Case("line", EMPTY, EMPTY, ("leg-press 4", "cable-curl 3"), units=2),
    Case("distinct", EMPTY, EMPTY, ("leg-press 4", "cable-curl 3, leg-press 2"), units=2),
)
BY_RULE = {case.rule: case for case in CASES}
BY_CLOCK = ("day-minutes", "warm-up-given")
"""Rules whose edges are seconds: tests/evaluation/test_clock_rules.py holds their cases."""


def lines(what: Lines, resolved: ResolvedBrief) -> Days:
    return what(resolved) if callable(what) else what


def seen(case: Case, what: Lines, brief: dict[str, Any]) -> list[Any]:
    resolved = terms_of(**brief)
    return found(audited(resolved, lines(what, resolved), case.sort), case.rule, case.about, case.day)


def outside(case: Case, **rules: Any) -> list[Any]:
    """What the audit says of the outside week, as it stands, once the brief changes rules."""
    base = terms_of(**case.brief)
    week = week_of(base, lines(case.outside, base), case.sort)
    return found(audit(terms_of(**case.brief, rules=rules), week), case.rule, case.about, case.day)


def test_every_rule_has_its_three_cases() -> None:
    assert set(BY_RULE) | set(BY_CLOCK) == set(RULES)
    assert len(BY_RULE) == len(CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.rule)
def test_nothing_to_forbid(case: Case) -> None:
    assert not seen(case, case.nothing, case.brief if case.idle is None else case.idle)


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.rule)
def test_just_inside(case: Case) -> None:
    assert not seen(case, case.inside, case.brief if case.near is None else case.near)


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.rule)
def test_just_outside(case: Case) -> None:
    resolved = terms_of(**case.brief)
    result = audited(resolved, lines(case.outside, resolved), case.sort)
    here = found(result, case.rule, case.about, case.day)
    assert here
    if RULES[case.rule].kind == "scored":
        assert all(f in result.charged for f in here)
        assert sum(f.cost for f in here) == pytest.approx(case.units * resolved.penalty(case.rule, 1, case.key), abs=1)
    else:
        assert all(f in result.broken and f.cost == 0 for f in here)


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.rule)
def test_off_lets_it_pass(case: Case) -> None:
    assert not outside(case, **{case.rule: "off"})


SCORED = [case for case in CASES if RULES[case.rule].kind == "scored" and case.rule != "liked"]
"""Scored rules but the one bonus, which cannot be broken."""


@pytest.mark.parametrize("case", [c for c in SCORED if c.units > 0], ids=lambda c: c.rule)
def test_a_scored_rule_made_hard_forbids(case: Case) -> None:
    base = terms_of(**case.brief)
    week = week_of(base, lines(case.outside, base), case.sort)
    result = audit(terms_of(**case.brief, rules={case.rule: "hard"}), week)
    assert any(f in result.broken for f in found(result, case.rule, case.about, case.day))
    assert not any(f.rule == case.rule for f in result.charged)


@pytest.mark.parametrize("case", SCORED, ids=lambda c: c.rule)
def test_a_number_is_the_new_cost(case: Case) -> None:
    cost = CATALOGUE.rules[case.rule].cost
    assert cost is not None
    before, after = outside(case), outside(case, **{case.rule: 2.0 * cost})
    assert sum(f.cost for f in after) == pytest.approx(2 * sum(f.cost for f in before), abs=2)


LIMITED = [c for c in CASES if c.rule in CATALOGUE.rules and CATALOGUE.rules[c.rule].limit is not None]


@pytest.mark.parametrize("case", LIMITED, ids=lambda c: c.rule)
def test_a_number_is_the_new_limit(case: Case) -> None:
    limit = CATALOGUE.rules[case.rule].limit
    assert limit is not None
    wider = 0.0 if case.rule in ("day-share", "to-failure", "muscle-on-day") else limit + 2.0
    assert not outside(case, **{case.rule: wider})


@pytest.mark.parametrize(
    ("minutes", "experience", "sets", "broken"),
    [
        (60, "advanced", 12, False),
        (60, "advanced", 13, True),
        (61, "advanced", 16, False),
        (61, "advanced", 17, True),
        (90, "novice", 9, False),
        (90, "novice", 10, True),
    ],
)
def test_a_long_day_holds_more_hard_sets_but_for_a_novice(
    minutes: int, experience: str, sets: int, broken: bool
) -> None:
    """Common practice, no source: four big lifts of four sets in an hour and a half, so that no pattern is left out."""
    resolved = terms_of(days=days("mon", minutes), client={"experience": experience})
    result = audited(resolved, (f"leg-press {sets}",))
    assert bool(found(result, "high-fatigue-sets")) is broken


def test_a_wider_movement_limit_gives_no_more_than_it_says() -> None:
    """One number overrides the limit, not the days and minutes from which a second press is allowed."""
    resolved = terms_of(days=days("mon", 30), rules={"movement-once": 2.0})
    presses = ("barbell-bench-press 2, incline-dumbbell-press 2, close-grip-barbell-bench-press 2",)
    assert found(audited(resolved, presses), "movement-once")


def test_a_close_press_waits_for_kit_priority_or_name() -> None:
    novice = {"client": {"experience": "novice"}, "muscles": {"arms": "priority"}}
    others = ["push-up", "hands-raised push-up", "knee-push-up", "archer-push-up"]
    poor = {"equipment": "bodyweight", "avoid": others}
    for name, brief in (
        ("neutral-grip-close-dumbbell-press", {"equipment": "home-dumbbells"}),
        ("close-grip-barbell-bench-press", novice),
        ("close-push-up", {}),
    ):
        resolved = terms_of(**brief)
        assert "close-press" in resolved.excluded_by(CATALOGUE.exercises[name], resolved.days[0]), name
    for name, brief in (("close-push-up", poor), ("bench-dip", {"like": ["bench-dip"]})):
        resolved = terms_of(**brief)
        assert not resolved.excluded_by(CATALOGUE.exercises[name], resolved.days[0]), name


def test_from_three_days_each_movement_is_owed_a_main_lift() -> None:
    week = ("barbell-bench-press 3", "barbell-row-to-chest 3", "barbell-back-squat 3")
    due = {
        experience: found(audited(terms_of(days=THREE, client={"experience": experience}), week), "region-main-lift")
        for experience in ("novice", "advanced")
    }
    assert not due["novice"]
    assert [f.subject for f in due["advanced"]] == ["vertical press", "vertical pull", "hinge"]


def test_one_day_of_growth_has_no_fifth_set() -> None:
    row, priority = CATALOGUE.exercises["machine-chest-supported-row"], {"muscles": {"back": "priority"}}
    spans = [
        set_span(terms_of(goal="growth", days=d, **more), row)[1] for d, more in ((ONE, {}), (TWO, {}), (ONE, priority))
    ]
    assert spans == [4, 5, 5]


def test_closed_by_names_every_rule_that_closes() -> None:
    resolved = terms_of(equipment="bands", avoid=["cable-curl"], muscles={"biceps": "none"})
    closed = resolved.excluded_by(CATALOGUE.exercises["cable-curl"], resolved.days[0])
    assert closed == ("equipment", "avoided", "muscle-none")
    assert all(RULES[rule].excludes for rule in closed)


def test_a_pin_opens_what_taste_closes_but_not_what_harms() -> None:
    pins = {"pins": [{"exercise": "pull-up"}, {"exercise": "barbell-bench-press"}]}
    alone = {"equipment": "barbell-garage", "client": {"experience": "novice", "trains_alone": True}}
    resolved = terms_of(**pins, **alone)
    day = resolved.days[0]
    assert not resolved.excluded_by(CATALOGUE.exercises["pull-up"], day)
    assert resolved.excluded_by(CATALOGUE.exercises["barbell-bench-press"], day) == ("lone-lifter",)


def test_light_dumbbells_move_the_repetitions_up() -> None:
    heavy, light = (terms_of(equipment=["dumbbell"], owned={"dumbbell_max": kg}) for kg in (50.0, 5.0))
    squat = CATALOGUE.exercises["goblet-squat"]
    assert reps_of(heavy, squat, heavy.days[0]) == squat.reps
    assert reps_of(light, squat, light.days[0]) > squat.reps


@pytest.mark.parametrize(
    ("lift", "usual", "novice"),
    [
        ("barbell-back-squat", (6, 8), (8, 10)),
        ("barbell-deadlift", (5, 8), (8, 10)),
        ("barbell-romanian-deadlift", (6, 10), (8, 10)),
        ("barbell-bench-press", (6, 10), (8, 10)),
        ("hack-squat", (8, 12), (8, 12)),
        ("feet-assisted-chin-up", (6, 10), (6, 10)),
        ("power-clean", (5, 5), (5, 5)),
        ("plank", (10, 15), (10, 15)),
    ],
)
def test_a_novice_begins_at_eight_repetitions(lift: str, usual: tuple[int, int], novice: tuple[int, int]) -> None:
    """ACSM 2009, Med Sci Sports Exerc 41:687: loads of an 8-12 repetition maximum for novices."""
    exercise = CATALOGUE.exercises[lift]
    for experience, due in (("intermediate", usual), ("novice", novice)):
        resolved = terms_of(client={"experience": experience})
        assert reps_of(resolved, exercise, resolved.days[0]) == due, experience
    fewer = terms_of(client={"experience": "novice"}, reps="lower")
    squats = [e for e in CATALOGUE.exercises.values() if e.main_lift and e.movement in ("knee", "hinge")]
    for e in (e for e in squats if e.load != "bodyweight" and e.rank < 5):
        low, high = reps_of(fewer, e, fewer.days[0])
        assert low >= 6
        assert high <= 12


def test_the_turn_of_the_week_is_a_night_too() -> None:
    resolved = terms_of(days=days("mon thu sun", 60))
    week = ("barbell-romanian-deadlift 3", "", "barbell-back-squat 3")
    assert found(audited(resolved, week), "axial-consecutive")
