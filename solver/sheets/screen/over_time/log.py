"""A training log on screen: sessions as tables and as a list, and what a coach may want to look at."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any, assert_never

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.sanitise import isolated
from setwright.solver.sheets.common.words import BREATH, counted, page_width, some_sets, span, weekday_name, wrapped
from setwright.solver.uses.log.log_checks import LogFinding


def session_text(session: LoggedSession, catalogue: Catalogue, width: int = 100) -> str:
    """One session: its day and times, a row for each lift with its sets, its note."""
    width = page_width(width)
    rows = lift_rows(session, catalogue)
    names = max((len(name) for name, _ in rows), default=0)
    lines = wrapped(f"{session_title(session)}: {session_facts(session)}", width)
    if rows:
        lines += grid(["Lift", f"Sets, loads in {session.unit}"], rows, "ll", [None, max(width - names - 2, 30)])
    lines += wrapped(f"Note: {isolated(session.note)}", width, "  ") if session.note else []
    return "\n".join(lines) + "\n"


def lift_rows(session: LoggedSession, catalogue: Catalogue) -> list[tuple[str, str]]:
    """(lift, its sets in words) in the order in which they were done."""
    return [
        (catalogue.exercises[lift].name, sets_words(tuple(sets), catalogue.exercises[lift]))
        for lift, sets in groupby(session.sets, key=lambda done: done.exercise)
    ]


def sets_words(sets: Sequence[LoggedSet], exercise: Exercise) -> str:
    """80 x 8, 8, 7 @ 2 RIR; 70 x 10: the sets of one lift in order, those of one load, reserve and side together."""
    runs = groupby(sets, key=lambda done: (done.side, done.load, done.rir))
    return "; ".join(_run(side, load, rir, list(run), exercise) for (side, load, rir), run in runs)


def _run(side: str | None, load: float | None, rir: int | None, sets: Sequence[LoggedSet], exercise: Exercise) -> str:
    reps = ", ".join(f"{BREATH * done.reps} s" if exercise.timed else f"{done.reps}" for done in sets)
    led = f"{side} " if side else ""
    return f"{led}{'' if load is None else f'{load:g} x '}{reps}{'' if rir is None else f' @ {rir} RIR'}"


def session_title(session: LoggedSession) -> str:
    """Monday 2026-01-05, week 2, session 1."""
    parts = [f"{weekday_name(WEEKDAYS[session.on.weekday()])} {session.on.isoformat()}"]
    parts += [f"week {session.week}"] if session.week is not None else []
    parts += [f"session {session.session}"] if session.session is not None else []
    return ", ".join(parts)


def session_facts(session: LoggedSession) -> str:
    """3 lifts, 9 sets, 18:03 to 18:55, 52 min, 7 of 10 hard."""
    parts = [counted(len({done.exercise for done in session.sets}), "lift"), some_sets(len(session.sets))]
    times = [f"{time:%H:%M}" for time in (session.started, session.ended) if time is not None]
    parts += [" to ".join(times)] if len(times) == 2 else [f"from {times[0]}"] if session.started else []
    minutes = minutes_of(session)
    parts += [f"{minutes:.0f} min"] if minutes is not None else []
    parts += [f"{session.how_hard} of 10 hard"] if session.how_hard is not None else []
    return ", ".join(parts)


def minutes_of(session: LoggedSession) -> float | None:
    """How long a session took: by its times, else as it was written down; None unsaid."""
    if session.started is not None and session.ended is not None:
        return (session.ended - session.started).total_seconds() / 60
    return session.minutes


def sessions_text(sessions: Sequence[LoggedSession]) -> str:
    """One line for each session."""
    if not sessions:
        return "No session.\n"
    rows = []
    for session in sessions:
        minutes = minutes_of(session)
        numbers = (session.week, session.session)
        lifts = len({done.exercise for done in session.sets})
        rows.append(
            [
                session.on.isoformat(),
                *("-" if number is None else str(number) for number in numbers),
                str(lifts),
                str(len(session.sets)),
                "-" if minutes is None else f"{minutes:.0f}",
            ]
        )
    lines = grid(["Date", "Week", "Session", "Lifts", "Sets", "Minutes"], rows, "lrrrrr")
    return "\n".join([*lines, counted(len(sessions), "session")]) + "\n"


def findings_document(findings: Sequence[LogFinding], catalogue: Catalogue) -> dict[str, Any]:
    """The findings as JSON, each with its sentence."""
    return {
        "schema": "setwright.log-check/1",
        "findings": [
            {
                "kind": one.kind,
                "on": one.on.isoformat(),
                "exercise": one.exercise or None,
                "set": one.number,
                "amount": one.amount,
                "unit": one.unit,
                "limit": list(one.limit),
                "text": finding_words(one, catalogue),
            }
            for one in findings
        ],
    }


def findings_text(findings: Sequence[LogFinding], catalogue: Catalogue, width: int = 100) -> str:
    """A line for each finding, or that there is none."""
    if not findings:
        return "Nothing to look at.\n"
    return (
        "\n".join(line for finding in findings for line in _finding_lines(finding, catalogue, page_width(width))) + "\n"
    )


def _finding_lines(finding: LogFinding, catalogue: Catalogue, width: int) -> Iterator[str]:
    yield from wrapped(f"{finding.on.isoformat()}: {finding_words(finding, catalogue)}", width, "  ")


def finding_words(finding: LogFinding, catalogue: Catalogue) -> str:
    """One finding as a sentence's end, such as: Bench press, set 2: 825 kg, usually about 80 kg."""
    lift = catalogue.exercises.get(finding.exercise)
    name = lift.name if lift is not None else finding.exercise
    amount, limit = finding.amount or 0, finding.limit
    match finding.kind:
        case "load":
            return f"{name}, set {finding.number}: {amount:g} {finding.unit}, usually about {limit[0]:g} {finding.unit}"
        case "sets":
            return f"{name}: {some_sets(amount)}, planned {limit[0]:g}"
        case "not planned":
            return f"{name}: is not in the week ({some_sets(amount)} done)"
        case "day off":
            return f"{weekday_name(WEEKDAYS[finding.on.weekday()])} is no day of the week's plan"
        case "repetitions":
            scale = BREATH if lift is not None and lift.timed else 1
            noun = "s" if scale > 1 else "repetitions"
            asked = span(scale * limit[0], scale * limit[1])
            return f"{name}, set {finding.number}: {scale * amount:g} {noun}, asked {asked}"
        case "sides":
            return f"{name}: left {some_sets(amount)}, right {some_sets(limit[0])}"
        case "missing":
            return f"session {finding.number} of the week is not in the log ({counted(round(amount), 'lift')} planned)"
        case _:
            assert_never(finding.kind)
