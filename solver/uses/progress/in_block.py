"""The next targets in a week of a block: from the log, in a lighter week lighter, as planned where nothing is known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.blocks.calendar import Kind
from setwright.solver.uses.blocks.targets import Target
from setwright.solver.uses.loads.buildable import Kit
from setwright.solver.uses.loads.kits import kit_on
from setwright.solver.uses.loads.next_step import lighter
from setwright.solver.uses.progress.next_targets import KitOf, NextTarget, next_targets
from setwright.solver.uses.progress.reason import Reason

LIGHTER: tuple[Kind, ...] = ("lighter", "return")
"""Kinds of weeks in which the load is a share of the usual one."""


def block_targets(
    week: BlockWeek, sessions: Sequence[LoggedSession], on: date, blocks: Sequence[Block]
) -> tuple[NextTarget, ...]:
    """The next target of every line of a block's week, for sessions that are done on `on` or soon after.

    Nothing is gone on from the sessions of a lighter week of the client's `blocks`: its loads say nothing of what is
    possible. Raises UsageFault where logged loads are in another unit than the client's; a week off has no targets.
    """
    evaluated = week.evaluated
    if evaluated is None:
        return ()
    resolved = evaluated.resolved
    usual = outside(LIGHTER if week.kind in LIGHTER else ("lighter",), blocks, sessions)
    found = next_targets(evaluated.week, usual, kits_of(evaluated), resolved.catalogue, resolved.brief.client.unit, on)
    lines = [line for day in evaluated.on for line in day]
    planned = [target for day in week.targets for target in day]
    return tuple(
        _settled(target, line, plan, week.kind, resolved)
        for target, line, plan in zip(found, lines, planned, strict=True)
    )


def outside(kinds: Sequence[Kind], blocks: Sequence[Block], sessions: Sequence[LoggedSession]) -> list[LoggedSession]:
    """The sessions that were not held in a week of some kinds."""
    return [session for session in sessions if _kind_on(blocks, session.on) not in kinds]


def kits_of(evaluated: EvaluatedWeek) -> KitOf:
    """What can be built for an exercise on a day of a week."""
    resolved = evaluated.resolved
    return lambda exercise, day: None if exercise.timed else kit_on(exercise, resolved, resolved.days[day])


def _kind_on(blocks: Sequence[Block], day: date) -> Kind | None:
    """The kind of the week that a day stands in, of the last block that has it."""
    found = [week.kind for block in blocks for week in block.weeks if week.place.holds(day)]
    return found[-1] if found else None


def _settled(found: NextTarget, line: Line, planned: Target, kind: Kind, resolved: ResolvedBrief) -> NextTarget:
    """A target as it holds in its kind of week."""
    kit = None if line.exercise.timed else kit_on(line.exercise, resolved, line.day)
    if found.reason.why == "never-done" and kit is not None and planned.load is not None:
        aims = (planned.reps,) * found.sets
        return replace(found, load=kit.at_most(planned.load), aims=aims, reason=Reason("as-planned"))
    if kind in LIGHTER and found.load is not None and found.last is not None:
        return _lightened(found, kit, resolved.catalogue.defaults.block.lighter_load)
    return found


def _lightened(found: NextTarget, kit: Kit | None, share: float) -> NextTarget:
    """The share of the load that was last used, for the lower end of the range."""
    last = None if found.last is None else found.last.load
    if kit is None or last is None:
        return found
    built = lighter(kit, last, share) or found.load
    reason = Reason("lighter-week", found.reason.sessions, step=None if built is None else 1 - built.load / last)
    return replace(found, load=built, aims=(found.reps[0],) * found.sets, reason=reason)
