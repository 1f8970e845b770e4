"""A tiny brief as a matrix written here from the rules' sentences alone, and solved: both engines agree with it."""

from __future__ import annotations

import math
import subprocess
import sys
from pathlib import Path
from typing import Any

import highspy
import numpy as np
import pytest
from boards import CATALOGUE, days, only, place_of

from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.prescriptions import prescriptions_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import RULES

CORE = (
    "day-minutes",
    "slot-once",
    "band-low",
    "band-high",
    "band-top",
    "exact-band",
    "equipment",
    "avoided",
    "set-range",
    "rest-range",
)
KEPT = ("dumbbell-bench-press", "one-arm-dumbbell-row", "dumbbell-curl", "dumbbell-hammer-curl", "goblet-squat")
BRIEFS: dict[str, dict[str, Any]] = {
    "one day": {"days": days("mon", 20)},
    "two days": {"days": days("mon thu", 12)},
    "priority": {"days": days("mon", 18), "muscles": {"biceps": "priority", "chest": "hold"}},
    "exact": {"days": days("mon", 20), "muscles": {"biceps": {"at_most": 4.0}, "quads": {"at_least": 2.0}}},
}
POINTS = [i / 4 for i in range(57)]
"""Where the chords of the curves touch, in sets."""


class Own:
    """A maximising matrix, row by row."""

    def __init__(self) -> None:
        self.highs: Any = highspy.Highs()
        self.highs.silent()
        self.highs.setOptionValue("threads", 1)
        self.highs.changeObjectiveSense(highspy.ObjSense.kMaximize)

    def variable(self, objective: float, high: float, whole: bool = True) -> int:
        self.highs.addCol(objective, 0.0, high, 0, np.array([], np.int32), np.array([], float))
        j = self.highs.getNumCol() - 1
        if whole:
            self.highs.changeColIntegrality(j, highspy.HighsVarType.kInteger)
        return j

    def constrain(self, resolved: dict[int, float], low: float = -math.inf, high: float = math.inf) -> None:
        self.highs.addRow(
            low, high, len(resolved), np.array(list(resolved), np.int32), np.array(list(resolved.values()), float)
        )

    def chords(self, curve: Any, objective: float, inside: dict[int, float]) -> int:
        """A variable no greater than the broken line through the curve's points over an expression."""
        share = [self.variable(0.0, 1.0, whole=False) for _ in POINTS]
        self.constrain(dict.fromkeys(share, 1.0), 1.0, 1.0)
        at = {s: -p for s, p in zip(share, POINTS, strict=True)}
        self.constrain({**inside, **at}, 0.0, math.inf)
        value = self.variable(objective, math.inf, whole=False)
        self.constrain({value: 1.0, **{s: -curve(p) for s, p in zip(share, POINTS, strict=True)}}, high=0.0)
        return value


def own_best(resolved: ResolvedBrief) -> float:
    """The best score by chords, in score units: no more than the true best."""
    own, n = Own(), resolved.curves.numbers
    uses: list[tuple[int, int, Any, Any]] = []
    for day in resolved.days:
        for exercise in resolved.open_on[day.index]:
            uses += [
                (own.variable(0.0, 1.0), day.index, exercise, o) for o in prescriptions_of(resolved, exercise, day)
            ]
    for day in resolved.days:
        here = [(j, e, o) for j, d, e, o in uses if d == day.index]
        for slot in {e.slot.id for _, e, _ in here}:
            own.constrain({j: 1.0 for j, e, _ in here if e.slot.id == slot}, high=1.0)
        seconds = {j: o.half_seconds / 2 for j, _, o in here}
        for region in ("push", "pull", "lower"):
            some, loaded, bar = own.variable(0.0, 1.0), own.variable(0.0, 1.0), own.variable(0.0, 1.0)
            for j, e, _ in here:
                if e.multi_joint and e.region == region:
                    own.constrain({j: 1.0, some: -1.0}, high=0.0)
                    easy = (e.fatigue == "low" and not e.barbell) or resolved.light(e, day)
                    own.constrain({j: 0.0 if easy else 1.0, loaded: -1.0}, high=0.0)
                    own.constrain({j: 1.0 if e.barbell and not easy else 0.0, bar: -1.0}, high=0.0)
            full = n[f"ramp-{region}-seconds"]
            light = min(n["ramp-light-seconds"], full)
            half = max(light, full // 2)
            seconds |= {some: light, loaded: half - light, bar: full - half}
        given = own.variable(
            -resolved.cost("warm-up-given") if not resolved.off("warm-up-given") else 0.0, day.warm_up_give
        )
        nobody_waits = min(o.rest for _, _, _, o in uses)
        own.constrain({**seconds, given: -1.0}, high=day.limit - day.warm_up + nobody_waits)
    for muscle in resolved.muscles.values():
        parts = [(j, d, e, o, dict(e.contributions).get(muscle.id, 0) / 100) for j, d, e, o in uses]
        sets = {j: part * o.credited / 100 for j, _, _, o, part in parts if part}
        if muscle.exact_low:
            own.constrain(sets, low=muscle.low)
        elif muscle.low and muscle.weight and sets:
            key = "large-or-priority"
            large = CATALOGUE.muscles[muscle.id].size == "large" or muscle.emphasis == "priority"
            short = own.variable(-resolved.cost("band-low", key if large else None), math.inf, whole=False)
            own.constrain({**sets, short: 1.0}, low=muscle.low)
        if muscle.exact_high:
            own.constrain(sets, high=muscle.high)
        goods = {}
        for day in resolved.days:
            good = {j: part * o.effective / 1000 for j, d, _, o, part in parts if part and d == day.index}
            if good:
                goods[own.chords(resolved.curves.session, 0.0, good)] = 1.0
        if goods and muscle.weight:
            own.chords(resolved.curves.index, muscle.weight / resolved.weight_sum * UNITS, goods)
    own.highs.setOptionValue("mip_rel_gap", 1e-6)
    own.highs.run()
    assert own.highs.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return float(own.highs.getInfo().objective_function_value)


@pytest.mark.parametrize("name", BRIEFS)
def test_both_engines_agree_with_a_matrix_of_our_own(name: str) -> None:
    rules = {rule: "off" for rule in RULES if rule not in CORE}
    place = place_of(**BRIEFS[name], equipment="home-dumbbells", avoid=only(*KEPT), rules=rules)
    own = own_best(place.resolved)
    model = day_model(place.instance, place.columns)
    program = CpSatModel(model)
    program.maximise()
    first = program.solve(20.0, 60.0)
    second = highs.bound(model, 5000, 60.0)
    assert first.status == "OPTIMAL" and second.closed
    assert own <= first.bound + 1 and own <= second.bound
    assert first.value == pytest.approx(second.value, abs=0.002 * abs(own) + 300)
    assert first.value <= own + 0.01 * abs(own) + 300
    assert second.value <= own + 0.01 * abs(own) + 300


FOREIGN = """
import sys
sys.path.insert(0, sys.argv[1])
import highspy, numpy
from boards import days, place_of
from setwright.solver.engines.build import day_model
from setwright.solver.engines import highs
other = highspy.Highs()
other.setOptionValue("output_flag", False)
other.setOptionValue("threads", 2)
other.addCol(1.0, 0.0, 1.0, 0, numpy.array([], numpy.int32), numpy.array([], float))
other.run()
place = place_of(days=days("mon", 12), equipment="bands")
found = highs.bound(day_model(place.instance, place.columns), 5, 20.0)
assert found.nodes >= 0 or found.bound == float("inf"), found
"""


def test_a_run_that_fails_bounds_nothing() -> None:
    """Another user of HiGHS in the process has set the number of its threads, so that our run is refused."""
    tests = Path(__file__).parents[1]
    env = {"PYTHONPATH": str(tests.parent / ".names"), "PATH": "/usr/bin:/bin"}
    run = subprocess.run(
        [sys.executable, "-c", FOREIGN, str(tests / "helpers")], env=env, capture_output=True, check=False
    )
    assert run.returncode == 0, run.stderr
