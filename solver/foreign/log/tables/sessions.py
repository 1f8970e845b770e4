"""The sessions that a file's gathered rows make, and the faults that only a whole session shows."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime, time

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.draft import Draft, ReadSession
from setwright.solver.foreign.log.row_faults import RowFaults
from setwright.solver.foreign.log.tables.gathering import APART, Gathering
from setwright.solver.log.unread import UnreadRow
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.sheets.document.progress.log_model import MOST_SETS


def sessions_of(file: Gathering) -> list[ReadSession]:
    """The sessions in the order of their dates; faults are kept in the file's."""
    unit = file.units.settled(file.faults, file.notes)
    found = [_session(draft, file, unit) for draft in file.drafts.values()]
    kept = [read for read in found if read.session.sets or read.session.note or read.session.minutes is not None]
    return sorted(kept, key=lambda read: (read.session.on, read.session.started or datetime.min))


def _session(draft: Draft, file: Gathering, unit: Unit) -> ReadSession:
    sets, rows = draft.in_order()
    _check_twice(draft, sets, rows, file)
    times = sorted(draft.times)
    if len(times) > 1 or (times and "started" in draft.said):
        file.unread += [_time_left(file.tables[draft.first // APART].place(draft.times[t]), t) for t in times]
        times = []
    said = {name: value for name, (value, _) in draft.said.items() if name != "started"}
    note = note_of(draft.notes, file.names.catalogue)
    place = file.place(draft.first)
    session = LoggedSession(
        on=draft.on,
        sets=tuple(sets),
        unit=unit,
        week=said.get("week"),
        session=said.get("session"),
        started=_started(draft, times),
        ended=said.get("ended"),
        minutes=said.get("minutes"),
        how_hard=said.get("how hard"),
        note=note,
    )
    return ReadSession(session, place, lambda at: file.place(rows[at]))


def _started(draft: Draft, times: Sequence[time]) -> datetime | None:
    """When a session began: as its rows say, or the one time that stands with its date."""
    found: datetime | None = draft.said["started"][0] if "started" in draft.said else None
    return datetime.combine(draft.on, times[0]) if times and found is None else found


def _time_left(place: str, said: time) -> UnreadRow:
    return UnreadRow(place, said.isoformat(), "a time beside the date that is not the start of the session")


def note_of(notes: Sequence[tuple[str, str]], catalogue: Catalogue) -> str:
    """The notes of a session in order, each once; one beside a single lift is led by its name."""
    lifts: dict[str, dict[str, None]] = {}
    for lift, words in notes:
        lifts.setdefault(words, {})[lift] = None
    parts = []
    for words, beside in lifts.items():
        lift = next(iter(beside))
        parts.append(f"{catalogue.exercises[lift].name}: {words}" if lift and len(beside) == 1 else words)
    return "; ".join(parts)


def _check_twice(draft: Draft, sets: Sequence[LoggedSet], rows: Sequence[int], file: Gathering) -> None:
    """Keep a fault for each set number that stands twice, and for rows that stand a second time further down."""
    before = len(file.faults)
    check_numbers(sets, lambda at: file.place(rows[at]), file.faults, file.names.catalogue)
    if len(draft.runs) < 2 or len(file.faults) > before:
        return
    met: dict[tuple[object, ...], int] = {}
    for start, end in zip(draft.runs, [*draft.runs[1:], len(draft.sets)], strict=True):
        run = tuple((s.exercise, s.reps, s.load, s.rir, s.side) for s in draft.sets[start:end])
        first = met.setdefault(run, start)
        if run and first != start:
            said = f"the session of {draft.on} stands twice, first in {file.place(draft.rows[first])}"
            file.faults.add(file.place(draft.rows[start]), said, "keep it once")


def check_numbers(
    sets: Sequence[LoggedSet], place: Callable[[int], str], faults: RowFaults, catalogue: Catalogue
) -> None:
    """Keep a fault for each number that two sets of one lift and side have, and for one beyond what a lift has."""
    met: dict[tuple[object, ...], int] = {}
    for at, done in enumerate(sets):
        first = met.setdefault((done.exercise, done.side, done.number), at)
        name = catalogue.exercises[done.exercise].name
        if first != at:
            said = f"set {done.number} of {name} stands twice in the session, first in {place(first)}"
            faults.add(place(at), said, "number the sets 1, 2, 3, or remove one")
        if done.number > MOST_SETS:
            faults.add(place(at), f"is set {done.number} of {name}, expected at most {MOST_SETS} in a session")
