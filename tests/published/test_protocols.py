"""Published protocols and guideline programmes read from tables as people write them: sets exact, minutes, none broken.

A protocol's file holds what its source says; what it does not say (a rest, an exercise) is named here. Weekly sets are
counted as the papers count them: every set of a lift that trains the muscle, directly or not.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.rulebook import resolve

FOLDER = Path(__file__).parent / "protocols"
CATALOGUE = load_catalogue()


@dataclass(frozen=True)
class Protocol:
    """A file, the weekly sets it must come out with, and where its source gives minutes the ids of those numbers."""

    name: str
    sets: Mapping[str, int]
    least: str = ""
    most: str = ""
    warm_up: bool = False
    """Whether the source's minutes are those of a whole visit, taken to hold a warm-up."""
    guideline: bool = False


SEVEN = {"quads": 9, "chest": 3, "front-delts": 6, "lats": 6, "biceps": 6, "triceps": 6}
"""Weekly sets a set of each of the seven lifts gives on three days."""
PROTOCOLS = (
    # Schoenfeld et al. 2019, doi 10.1249/MSS.0000000000001764 (A; minutes of 3 and 5 sets B): lifting alone.
    Protocol("schoenfeld-2019-1-sets", SEVEN, "schoenfeld-2019-1-set-minutes"),
    Protocol("schoenfeld-2019-3-sets", {m: 3 * n for m, n in SEVEN.items()}, "schoenfeld-2019-3-sets-minutes"),
    Protocol(
        "schoenfeld-2019-5-sets",
        {m: 5 * n for m, n in SEVEN.items()},
        "schoenfeld-2019-5-sets-least-minutes",
        "schoenfeld-2019-5-sets-most-minutes",
    ),
    # Schoenfeld et al. 2016, doi 10.1519/JSC.0000000000001272 (A; lifts B): no minutes on record.
    Protocol("schoenfeld-2016-short", {m: 3 * n for m, n in SEVEN.items()}),
    Protocol("schoenfeld-2016-long", {m: 3 * n for m, n in SEVEN.items()}),
    # Burke et al. 2024, doi 10.51224/SRXIV.419 (A; minutes B): whole sessions.
    Protocol(
        "burke-2024-straight", {"quads": 8, "chest": 8, "biceps": 16}, "burke-2024-straight-minutes", warm_up=True
    ),
    Protocol("burke-2024-paired", {"quads": 8, "chest": 8, "biceps": 16}, "burke-2024-paired-minutes", warm_up=True),
    # Andersen et al. 2022, doi 10.3389/fpsyg.2022.912368 (A): eight lifts x 3; lifts and rest invented, two minutes.
    Protocol("andersen-2022-straight", {"chest": 6, "quads": 6, "hamstrings": 6}, "andersen-2022-straight-minutes"),
    Protocol("andersen-2022-paired", {"chest": 6, "quads": 6, "hamstrings": 6}),
    # Yang et al. 2018, doi 10.3389/fphys.2018.00725 (A): 3 x 10 of five lifts on three days; the rest is not said.
    Protocol("yang-2018-consecutive", {"quads": 18, "lats": 9, "hamstrings": 9}),
    # Ochi et al. 2018, doi 10.3389/fphys.2018.00744 (A): two sets of knee extension three times a week.
    Protocol("ochi-2018-thrice", {"quads": 6}),
    # Hermann et al. 2025, doi 10.1249/MSS.0000000000003728 (A; the nine lifts B): one set of each, twice a week.
    Protocol("hermann-2025-failure", {"quads": 6, "chest": 2, "biceps": 6}),
    Protocol("hermann-2025-reserve", {"quads": 6, "chest": 2, "biceps": 6}),
    # ACSM 2011, Med Sci Sports Exerc 43:1334: 2-4 sets of 8-12 for each major group on 2-3 days (M). Lifts invented.
    Protocol("guideline-acsm-2011-general", {"chest": 4, "quads": 4, "hamstrings": 4}, guideline=True),
    # NSCA 2019 (older adults), J Strength Cond Res 33:2019: 8-10 lifts, up to 2-3 sets of 8-15, 2-3 days (M). Invented.
    Protocol("guideline-nsca-2019-older", {"chest": 4, "quads": 4, "hamstrings": 4}, guideline=True),
    # ACSM 2009, Med Sci Sports Exerc 41:687, novices: 1-3 sets of 8-12, 1-2 min, 2-3 days (M). Lifts invented.
    Protocol("guideline-acsm-2009-novice", {"chest": 3, "quads": 3, "hamstrings": 6}, guideline=True),
    # UK Chief Medical Officers 2019: strength work for the major groups on two days (M). Lifts, sets invented.
    Protocol("guideline-uk-2019-home", {"chest": 4, "quads": 4, "abs": 4}, guideline=True),
)
GUIDELINES = [p for p in PROTOCOLS if p.guideline]
TIMED = [p for p in PROTOCOLS if p.least]


def read(protocol: Protocol) -> Audit:
    file = FOLDER / f"{protocol.name}.csv"
    found = read_any(file.read_bytes(), file.name, CATALOGUE)
    return audit(resolve(found.parsed.brief, CATALOGUE), found.week)


def sets_of(week: EvaluatedWeek, muscle: str) -> int:
    """The weekly sets of lifts that train a muscle, each counted whole."""
    return sum(line.sets for line in week.lines if muscle in line.exercise.muscles)


@pytest.mark.parametrize("protocol", PROTOCOLS, ids=lambda p: p.name)
def test_every_set_is_read(protocol: Protocol) -> None:
    week = read(protocol).evaluated
    assert {muscle: sets_of(week, muscle) for muscle in protocol.sets} == dict(protocol.sets)


@pytest.mark.parametrize("protocol", TIMED, ids=lambda p: p.name)
def test_minutes_within_a_tenth_of_those_published(protocol: Protocol, published) -> None:
    week = read(protocol).evaluated
    ramps = sum(seconds for (day, _), seconds in week.ramp_up.items() if day == 0)
    beside = 0 if protocol.warm_up else week.warm_up(0) + ramps
    minutes = (week.seconds(0) - beside) / 60
    low, high = published(protocol.least).value, published(protocol.most or protocol.least).value
    assert 0.9 * low <= minutes <= 1.1 * high


@pytest.mark.parametrize("protocol", GUIDELINES, ids=lambda p: p.name)
def test_a_guideline_programme_breaks_nothing(protocol: Protocol) -> None:
    found = read(protocol)
    assert not found.violations
    assert found.stimulus > 0


def test_twelve_protocols_and_four_guidelines_are_read() -> None:
    assert len(PROTOCOLS) - len(GUIDELINES) >= 12
    assert len(GUIDELINES) >= 4
    assert {p.name for p in PROTOCOLS} == {file.stem for file in FOLDER.glob("*.csv")}
