"""A week's seconds: the sum of its sessions, and nothing for a day without lines."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from boards import audited, cached, sound_week

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.week import Week


def test_an_empty_day_takes_no_seconds_though_it_has_a_warm_up() -> None:
    place = cached("home")
    evaluated = audited(place.instance, sound_week(place, Random(1), 30)).evaluated
    assert all(evaluated.on)
    assert evaluated.week_seconds == evaluated.seconds(0) + evaluated.seconds(1)
    rested: EvaluatedWeek = replace(evaluated, week=Week((evaluated.week.days[0], ())))
    assert rested.seconds(1) == rested.resolved.days[1].overhead > 0
    assert rested.week_seconds == evaluated.seconds(0)
    assert replace(evaluated, week=Week(((), ()))).week_seconds == 0
