"""One brief measured in a process of its own: `python -m tests.bench.one BRIEF [ours|highs|cpsat]` prints JSON."""

from __future__ import annotations

import io
import json
import math
import resource
import sys
import time
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / ".names"))

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.engines import cpsat, highs
from setwright.solver.engines.build import day_model, week_model
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import Progress, search
from setwright.solver.search.candidates import candidates_of, ranking_of
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.solve_options import SolveOptions

MOMENTS = (3.0, 5.0, 10.0, 30.0)
PEER_SECONDS = 10.0


def measured(path: str, who: str) -> dict[str, Any]:
    """What one engine did with one brief; scores in index points, seconds from after the imports."""
    catalogue = load_catalogue()
    instance = instance_of(resolve(read_brief(path, catalogue, io.BytesIO(b"")).brief, catalogue))
    found = {"ours": ours, "highs": whole_highs, "cpsat": whole_cpsat}[who](instance)
    found["megabytes"] = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    return found


def ours(instance: Instance) -> dict[str, Any]:
    """The normal search, and its gap as it went."""
    heard: list[Progress] = []
    begun = time.monotonic()
    outcome = search(instance, SolveOptions(SEARCHES["normal"], watch=heard.append))
    done = time.monotonic() - begun
    if outcome.best is None:
        return {"seconds": done, "week": False}
    stimulus = outcome.best.stimulus
    known = [p for p in heard if math.isfinite(p.score)]
    end = (outcome.bound - outcome.best.score_units) / UNITS

    def gap(moment: float) -> float | None:
        if moment >= done:
            return end
        seen = [p for p in known if p.seconds <= moment]
        return (seen[-1].bound - seen[-1].score) / UNITS if seen else None

    def reached(share: float) -> float | None:
        times = (p.seconds for p in known if p.bound - p.score <= share * stimulus * UNITS)
        return next(times, done if end <= share * stimulus else None)

    return {
        "week": True,
        "seconds": done,
        "first": known[0].seconds,
        "stimulus": stimulus,
        "gaps": [gap(moment) for moment in MOMENTS],
        "end": end,
        "to_1": reached(0.01),
        "to_half": reached(0.005),
    }


def whole(instance: Instance) -> LinearModel:
    """The week on its days over our candidate columns, as one model."""
    week = week_model(instance)
    return day_model(instance, candidates_of(ranking_of(instance, week, highs.relax(week))).columns)


def whole_highs(instance: Instance) -> dict[str, Any]:
    """HiGHS alone on the whole week, one thread."""
    found = highs.bound(whole(instance), 10**9, PEER_SECONDS, restarts=True)
    return gap_of(found.bound, found.value)


def whole_cpsat(instance: Instance) -> dict[str, Any]:
    """CP-SAT alone on the whole week, two workers."""
    cpsat.WORKERS = 2
    program = cpsat.CpSatModel(whole(instance))
    program.maximise()
    found = program.solve(1e9, PEER_SECONDS)
    return gap_of(found.bound, found.value)


def gap_of(bound: float, value: float) -> dict[str, Any]:
    """A peer's own gap in index points; None without a week."""
    return {"end": (bound - value) / UNITS if math.isfinite(bound) and math.isfinite(value) else None}


if __name__ == "__main__":
    saved = sys.stdout
    sys.stdout = sys.stderr
    who = sys.argv[2] if len(sys.argv) > 2 else "ours"
    result = measured(sys.argv[1], who)
    print("\n" + json.dumps(result), file=saved)
