"""A week of a block gone on with: its next targets, what was done before, which lifts stand still."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.log.mondays import monday_of
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.progress.done_against_planned import MuscleDone, SessionDone, muscles_done, sessions_done
from setwright.solver.uses.progress.in_block import LIGHTER, block_targets, kits_of, outside
from setwright.solver.uses.progress.maximum_course import MaximumEstimate, has_maximum, maximum_course
from setwright.solver.uses.progress.next_targets import NextTarget
from setwright.solver.uses.progress.stalls import Stall, stalls

LAST: Final = 6
"""So many of the last sessions are set against the plan."""


@dataclass(frozen=True)
class NextWeek:
    """What a client does next in a week that has sessions, and what it rests on."""

    week: BlockWeek
    on: date
    targets: tuple[NextTarget, ...]
    done: tuple[SessionDone, ...]
    """The last sessions up to that day, each beside the week that was planned for it."""
    muscles: tuple[MuscleDone, ...]
    """Weekly sets of the last week that has a session."""
    muscles_planned: EvaluatedWeek
    """The week that was planned for it."""
    stalls: tuple[Stall, ...]
    sessions: tuple[LoggedSession, ...]
    """All that is logged."""

    @property
    def evaluated(self) -> EvaluatedWeek:
        """The week evaluated against its own brief."""
        assert self.week.evaluated is not None
        return self.week.evaluated


def next_week(week: BlockWeek, blocks: Sequence[Block], sessions: Sequence[LoggedSession], day: date) -> NextWeek:
    """How to go on in a week of a client's `blocks` on a day; raises UsageFault for loads in another unit."""
    evaluated, audit = week.evaluated, week.audit
    assert evaluated is not None and audit is not None
    past = [session for session in sessions if session.on <= day]
    last = [session for session in past if monday_of(session.on) == monday_of(past[-1].on)]
    planned = planned_for(blocks, past[-1].on, evaluated) if past else evaluated
    unit = evaluated.resolved.brief.client.unit
    return NextWeek(
        week=week,
        on=day,
        targets=block_targets(week, sessions, day, blocks),
        done=tuple(one for s in past[-LAST:] for one in sessions_done(planned_for(blocks, s.on, evaluated), [s])),
        muscles=muscles_done(planned, last),
        muscles_planned=planned,
        stalls=stalls(audit, outside(LIGHTER, blocks, past), kits_of(evaluated), unit),
        sessions=tuple(sessions),
    )


def planned_for(blocks: Sequence[Block], day: date, otherwise: EvaluatedWeek) -> EvaluatedWeek:
    """The week that the last of some blocks has for a day, else another."""
    found = [week.evaluated for block in blocks for week in block.weeks if week.place.holds(day) and week.evaluated]
    return found[-1] if found else otherwise


def maximum_courses(found: NextWeek) -> dict[str, tuple[MaximumEstimate, ...]]:
    """Exercise -> the estimated maximum from session to session, of the week's lifts that were done twice or more."""
    courses = {
        line.exercise.id: maximum_course(found.sessions, line.entry, found.evaluated.resolved.catalogue)
        for line in found.evaluated.lines
        if has_maximum(line.exercise)
    }
    return {exercise: course for exercise, course in courses.items() if len(course) > 1}
