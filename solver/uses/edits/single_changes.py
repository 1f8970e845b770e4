"""The single changes that improve a week most, one on top of the other, each audited."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.uses.edits.candidate_moves import Kind, Move, moves, week_after
from setwright.solver.uses.edits.effects import TIME, Effect, effect
from setwright.solver.uses.edits.make_room import Cut, room_for
from setwright.solver.uses.edits.sound_changes import is_sound

MOST_CROWDED = 12
"""Changes that a full day has no room for, for which room is sought: those that would score most."""
SHORTLIST = 60
"""Changes of the first look that are looked at again after each change made."""
A_BREACH = 10_000
"""Score units that a breach of what holds in any week is taken for (convention: one point)."""
LEAST = 2_000
"""Score units below which a change is not worth a coach's while (convention: a fifth of a point)."""


@dataclass(frozen=True)
class SingleChange:
    """One change of a day, and what it does on top of those before it; exercises by id."""

    kind: Kind
    day: ResolvedDay
    old: str | None
    new: str | None
    room: Cut | None
    """What else is cut that day so that it fits."""
    effect: Effect


@dataclass(frozen=True)
class TriedMove:
    """A move carried out, with the cut that made room for it."""

    move: Move
    after: Audit
    room: Cut | None = None


def best_changes(found: Audit, most: int) -> tuple[SingleChange, ...]:
    """Up to `most` changes, each the best at its turn by score, rules no longer broken and minutes no longer too many.

    No change breaks a rule more often than before, nor makes a day that is too long longer, and each is one that a
    coach would stand by (`is_sound`); one that a full day has no room for is taken with the cut of another line.
    """
    made: list[SingleChange] = []
    now = found
    shortlist = list(dict.fromkeys(trial.move for trial in _ranked(now, moves(now))[:SHORTLIST]))
    while len(made) < most:
        able = _ranked(now, iter(shortlist))
        if not able or not _is_better(now, able[0].after):
            break
        best, move = able[0], able[0].move
        day = now.evaluated.resolved.days[move.day]
        made.append(SingleChange(move.kind, day, move.old, _new_of(move), best.room, Effect(now, best.after)))
        now = best.after
    return tuple(made)


def _is_better(now: Audit, after: Audit) -> bool:
    """Whether days are less over their minutes, or are no more over them and the week is worth enough more."""
    if seconds_over(after) != seconds_over(now):
        return seconds_over(after) < seconds_over(now)
    return value(after) >= value(now) + LEAST


def _new_of(move: Move) -> str | None:
    return move.new.id if move.new else None


def value(found: Audit) -> int:
    """A week's score less a price for each breach, in score units."""
    return found.score_units - A_BREACH * len(found.violations)


def seconds_over(found: Audit) -> int:
    """The seconds by which days are beyond their minutes."""
    evaluated = found.evaluated
    return sum(max(0, evaluated.seconds(d.index) - d.limit) for d in evaluated.resolved.days if evaluated.on[d.index])


def _ranked(now: Audit, tried: Iterator[Move]) -> list[TriedMove]:
    """The moves that can be carried out and break nothing more often, alone or with room made.

    Those that leave days least over their minutes come first, and of these the ones that are worth most.
    """
    found: list[TriedMove] = []
    crowded: list[TriedMove] = []
    for move in tried:
        week = week_after(now, move)
        if week is not None:
            done = effect(now, week)
            trial = TriedMove(move, done.after)
            if not done.broken:
                found.append(trial)
            elif move.new and {f.rule for f in done.broken} == {TIME}:
                crowded.append(trial)
    crowded.sort(key=lambda trial: -trial.after.score_units)
    found += [fit for trial in crowded[:MOST_CROWDED] if (fit := _fitted(now, trial)) is not None]
    found = [trial for trial in found if is_sound(now, trial.after, trial.move)]
    return sorted(found, key=lambda trial: (seconds_over(trial.after), -value(trial.after)))


def _fitted(now: Audit, trial: TriedMove) -> TriedMove | None:
    """A move with the cut of another line of its day that makes room for it."""
    made = room_for(now, trial.after, trial.move.day, _new_of(trial.move) or "")
    return None if made is None else TriedMove(trial.move, made[1].after, made[0])
