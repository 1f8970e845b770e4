"""What no session may be: in the future, over before it began, in the file twice, or told at too great a length."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from setwright.solver.foreign.log.draft import ReadSession
from setwright.solver.foreign.log.row_faults import RowFaults
from setwright.solver.log.values import LoggedSession
from setwright.solver.sheets.document.progress.log_model import MOST_LETTERS
from setwright.solver.uses.log.digest import digest_of


def check_sessions(found: Sequence[ReadSession], today: date | None, faults: RowFaults) -> None:
    """Keep a fault for each; times are as a watch showed them, so a change of the clocks is no fault by itself."""
    met: dict[object, str] = {}
    for read in found:
        session = read.session
        if today is not None and session.on > today:
            said = f"{session.on} is in the future, today is {today}"
            faults.add(read.place, said, "mend the date")
        if session.started and session.ended and session.ended < session.started:
            said = f"ended {session.ended:%Y-%m-%d %H:%M}, before it started {session.started:%Y-%m-%d %H:%M}"
            faults.add(read.place, said, "write the date as well where it went past midnight")
        if len(session.note) > MOST_LETTERS:
            said = f"has notes of {len(session.note)} letters, expected at most {MOST_LETTERS}"
            faults.add(read.place, said, "shorten them")
        for key in _keys(session):
            first = met.setdefault(key, read.place)
            if first != read.place:
                faults.add(read.place, f"the session of {session.on} stands twice, first in {first}", "keep it once")
                break


def _keys(session: LoggedSession) -> list[object]:
    """What two sessions of a file may not share: all they say, their start, or their number on one day."""
    keys: list[object] = [digest_of(session)]
    if session.started is not None:
        keys.append(session.started)
    if session.session is not None:
        keys.append((session.on, session.week, session.session))
    return keys
