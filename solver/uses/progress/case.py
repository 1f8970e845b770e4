"""One line of the week with what was done on it, and what a rule decides about it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.week import Entry
from setwright.solver.uses.loads.buildable import Built
from setwright.solver.uses.progress.exposure import Exposure
from setwright.solver.uses.progress.ladder import Ladder
from setwright.solver.uses.progress.numbers import ProgressNumbers
from setwright.solver.uses.progress.reason import Reason, Why


@dataclass(frozen=True)
class Case:
    """What a rule looks at; `past` is oldest first, `ladder` None for body weight and bands."""

    entry: Entry
    exercise: Exercise
    past: tuple[Exposure, ...]
    ladder: Ladder | None
    on: date
    numbers: ProgressNumbers

    @property
    def last(self) -> Exposure:
        """The newest exposure; raises IndexError where there is none."""
        return self.past[-1]

    @property
    def low(self) -> int:
        """The lower end of the planned repetitions."""
        return self.entry.reps[0]

    @property
    def high(self) -> int:
        """The upper end of the planned repetitions."""
        return self.entry.reps[1]

    @property
    def straight(self) -> int:
        """The planned sets without a technique, which the range is for; one at least."""
        return max(1, self.entry.sets - (self.entry.technique != "straight"))

    def recent(self, count: int) -> tuple[Exposure, ...]:
        """The newest exposures with the working load of the last one, at most `count`, without a break."""
        found: list[Exposure] = []
        for exposure in reversed(self.past[-count:]):
            if exposure.load != self.last.load:
                break
            found.insert(0, exposure)
        return tuple(found)

    def reason(self, said: Reason, *rested_on: Exposure) -> Reason:
        """A reason with the sessions it rests on, and whether repetitions alone decided."""
        return replace(
            said,
            sessions=tuple(exposure.on for exposure in rested_on),
            by_reps_alone=said.why not in NOT_BY_REPS and any(not exposure.rir_said for exposure in rested_on),
        )


@dataclass(frozen=True)
class Decision:
    """A load (None: none to set, or none can be built), the repetitions aimed at in each set, and why."""

    load: Built | None
    aims: tuple[int, ...]
    reason: Reason


def aims_from(case: Case, gains: tuple[int, ...], most: int) -> tuple[int, ...]:
    """The last repetitions of each set with its gain, inside the range up to `most`; sets not done take the least."""
    done = [reps + gain for reps, gain in zip(case.last.reps, gains, strict=True)] or [case.low]
    wanted = [*done, *[min(done)] * case.entry.sets][: case.entry.sets]
    return tuple(min(max(reps, case.low), most) for reps in wanted)


def hold(case: Case, said: Reason, aims: tuple[int, ...], *rested_on: Exposure) -> Decision:
    """The same load, or the next easier one where it cannot be built; the reason tells where there is none."""
    load = None if case.ladder is None or case.last.load is None else case.ladder.same(case.last.load)
    missing = case.ladder is not None and load is None
    return Decision(load, aims, case.reason(replace(said, nothing_lighter=missing), *rested_on))


NOT_BY_REPS: tuple[Why, ...] = ("long-gap", "load-unsaid", "technique-only")
"""Reasons that look at no repetitions."""
