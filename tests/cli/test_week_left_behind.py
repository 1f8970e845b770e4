"""`week` where an engine does not hear that it is over: the best week so far, at once, with exit 130 or 0."""

from __future__ import annotations

import json
import os
import signal
import threading
from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest
from click.testing import CliRunner

import setwright.solver.planning as planning
from setwright.catalogue.entries import Catalogue
from setwright.solver import load_catalogue, read_brief
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.cli.commands import week
from setwright.solver.cli.console import left_behind
from setwright.solver.cli.group import setwright
from setwright.solver.planning import End
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.solve_options import Progress, SolveOptions

PHRASE = "1 day x 15 min, bands"
QUICK = SolveOptions(SEARCHES["quick"], pairs_note=False)


class Deaf:
    """Planning that tells what it knows, has something happen, and then hears nothing."""

    def __init__(self, happens: Callable[[], None], knows_a_week: bool) -> None:
        self.happens, self.let_go = happens, threading.Event()
        told: list[Progress] = []
        catalogue = load_catalogue()
        self.end = planning.plan(read_brief(PHRASE, catalogue), catalogue, replace(QUICK, watch=told.append))
        self.told = next(progress for progress in told if progress.best) if knows_a_week else None

    def __call__(self, parsed: ParsedBrief, catalogue: Catalogue, options: SolveOptions) -> End:
        assert options.watch is not None
        if self.told:
            options.watch(self.told)
        self.happens()
        self.let_go.wait()
        return self.end


@pytest.fixture
def deaf(monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[[Callable[[], None], bool], Deaf]]:
    made: list[Deaf] = []

    def make(happens: Callable[[], None], knows_a_week: bool = True) -> Deaf:
        made.append(Deaf(happens, knows_a_week))
        monkeypatch.setattr(planning, "plan", made[-1])
        return made[-1]

    def end(code: int) -> None:
        raise SystemExit(int(code))

    monkeypatch.setattr(left_behind, "GRACE", 0.01)
    monkeypatch.setattr(week, "end_process", end)
    yield make
    for one in made:
        one.let_go.set()


def ctrl_c() -> None:
    os.kill(os.getpid(), signal.SIGINT)


def test_ctrl_c_prints_the_best_week_so_far(deaf) -> None:
    deaf(ctrl_c)
    ended = CliRunner().invoke(setwright, ["week", PHRASE, "--json"])
    document = json.loads(ended.stdout)
    assert ended.exit_code == 130 and document["ended_by"] == "stopped"
    assert document["days"][0]["entries"] and document["bound"] >= document["score"]


def test_ctrl_c_before_the_first_week_says_that_there_is_none(deaf) -> None:
    deaf(ctrl_c, knows_a_week=False)
    ended = CliRunner().invoke(setwright, ["week", PHRASE])
    assert ended.exit_code == 130 and "no week was found (stopped)" in ended.stderr and not ended.stdout


def test_a_time_limit_ends_a_deaf_engine_too(deaf) -> None:
    deaf(lambda: None)
    ended = CliRunner().invoke(setwright, ["week", PHRASE, "--json", "--time-limit", "0.05"])
    assert ended.exit_code == 0 and json.loads(ended.stdout)["ended_by"] == "time limit"
