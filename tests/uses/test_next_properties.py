"""What holds of every next load, over random logs, kits and ranges."""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from hypothesis import given, settings
from hypothesis import strategies as st
from logs import BENCH, CATALOGUE, CURL, next_of

from setwright.catalogue.check import REP_RANGES
from setwright.solver.uses.loads.buildable import Bar, Kit, OnePlate, Steps

PLATES = st.lists(st.sampled_from((0.5, 1.25, 2.5, 5.0, 10.0, 20.0)), min_size=1, max_size=6).map(tuple)
KITS = st.one_of(
    st.builds(Bar, st.sampled_from((10.0, 20.0)), PLATES),
    st.builds(OnePlate, PLATES),
    st.builds(Steps, st.sampled_from((1.0, 2.0, 5.0)), st.sampled_from((1.0, 2.0, 5.0)), st.sampled_from((24.0, 60.0))),
)


def loads_of(kit: Kit) -> list[float]:
    """Every load of a kit, by sums of plates, by steps and by single plates."""
    if isinstance(kit, Bar):
        some = (s for n in range(len(kit.pairs) + 1) for s in itertools.combinations(kit.pairs, n))
        return sorted({round(kit.weight + 2 * sum(plates), 3) for plates in some})
    if isinstance(kit, OnePlate):
        return sorted(set(kit.plates))
    assert kit.most is not None
    return [kit.least + n * kit.step for n in range(200) if kit.least + n * kit.step <= kit.most]


@dataclass(frozen=True)
class Drawn:
    kit: Kit
    load: float
    reps: tuple[int, int]
    sessions: tuple[tuple[tuple[int, int | None], ...], ...]
    """Of each session its sets as (repetitions, left)."""
    after: int

    @property
    def texts(self) -> list[str]:
        said = []
        for sets in self.sessions:
            left = "" if any(rir is None for _, rir in sets) else " @" + ",".join(str(rir) for _, rir in sets)
            said.append(f"{self.load}x" + ",".join(str(reps) for reps, _ in sets) + left)
        return said


@st.composite
def drawn(draw: st.DrawFn, buildable: bool = True) -> Drawn:
    kit = draw(KITS)
    load = draw(st.sampled_from(loads_of(kit))) if buildable else draw(st.integers(1, 130)) * 0.75
    one = st.tuples(st.integers(1, 30), st.none() | st.integers(0, 6))
    sessions = st.lists(st.lists(one, min_size=1, max_size=4).map(tuple), min_size=1, max_size=3).map(tuple)
    return Drawn(kit, load, draw(st.sampled_from(sorted(REP_RANGES))), draw(sessions), draw(st.integers(1, 40)))


FAIR = settings(max_examples=250, derandomize=True, deadline=None)


@FAIR
@given(drawn(buildable=False))
def test_a_next_load_can_always_be_built(case: Drawn) -> None:
    found = next_of(BENCH, *case.texts, reps=case.reps, kit=case.kit, after=case.after)
    loads = loads_of(case.kit)
    if found.load is None:
        assert found.reason.nothing_lighter and min(loads) > case.load * 0.95 - 1e-6
    else:
        assert any(abs(found.load.load - load) < 1e-6 for load in loads)


@FAIR
@given(drawn())
def test_no_load_rises_by_over_ten_per_cent_without_repetitions_beyond_the_range(case: Drawn) -> None:
    """ACSM 2009: 2 to 10 %; a larger step only after repetitions over the range in every set."""
    found = next_of(CURL, *case.texts, reps=case.reps, kit=case.kit, after=case.after)
    if found.load is not None and found.load.load > case.load * 1.1 + 1e-3:
        assert min(reps for reps, _ in case.sessions[-1]) > case.reps[1]
        assert found.reason.why == "big-step-earned"


@FAIR
@given(drawn())
def test_no_load_falls_after_success(case: Drawn) -> None:
    """Success: every set inside the range or over it, with no fewer left than the 2 that are asked for."""
    last = case.sessions[-1]
    if case.after < 21 and all(reps >= case.reps[0] and (rir is None or rir >= 2) for reps, rir in last):
        found = next_of(BENCH, *case.texts, reps=case.reps, kit=case.kit, after=case.after)
        assert found.load is not None and found.load.load >= case.load - 1e-6


@FAIR
@given(drawn())
def test_no_load_rises_after_failure_and_every_aim_is_within_reason(case: Drawn) -> None:
    found = next_of(BENCH, *case.texts, reps=case.reps, kit=case.kit, after=case.after)
    low, high = case.reps
    assert len(found.aims) == found.sets
    assert all(low <= aim <= high + round(CATALOGUE.number("progress-reps-beyond")) for aim in found.aims)
    if all(reps < low for reps, _ in case.sessions[-1]):
        assert found.load is None or found.load.load <= case.load + 1e-6


@FAIR
@given(drawn())
def test_the_same_log_gives_the_same_target(case: Drawn) -> None:
    said = {"reps": case.reps, "kit": case.kit, "after": case.after}
    assert next_of(BENCH, *case.texts, **said) == next_of(BENCH, *case.texts, **said)


def test_a_client_who_keeps_to_the_targets_gets_stronger_in_steps_that_can_be_built() -> None:
    """Forty sessions of someone who always does what is asked: the load never falls and rises by 10 % at most."""
    texts, load = ["40x8,8,8 @2"], 40.0
    for _ in range(40):
        found = next_of(BENCH, *texts)
        assert found.load is not None and load <= found.load.load <= 1.1 * load
        load = found.load.load
        texts.append(f"{load}x{','.join(map(str, found.aims))} @2")
    assert load == 60
