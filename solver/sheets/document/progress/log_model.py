"""A training log as a document, `setwright.log/1`, as models: what is read, and what `setwright schema log` prints."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields
from datetime import date, datetime
from typing import Annotated, Any, Final, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema

from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.schema import Unit
from setwright.solver.brief.validation_faults import refusal
from setwright.solver.log.unread import UnreadRow
from setwright.solver.log.values import LoggedSession, LoggedSet, Side
from setwright.solver.sheets.document.week_fields import ExerciseId, Many, Part, Rir
from setwright.solver.sheets.xlsx.log_keys import HARDEST, MOST_LOAD, MOST_MINUTES, MOST_REPS

SCHEMA = "setwright.log/1"
MOST_SETS: Final = 50
"""Sets of one lift in a session, above which a number is a slip of the pen (convention)."""
MOST_WEEKS: Final = 520
MOST_SESSIONS: Final = 14
MOST_LETTERS: Final = 2_000
"""Of a session's note."""


def _day(value: Any) -> date:
    try:
        return date.fromisoformat(value) if isinstance(value, str) and len(value) == 10 else _none(value)
    except ValueError:
        raise refusal(f"got {shown(value)}, expected a date such as 2026-01-05") from None


def _none(value: Any) -> Any:
    raise ValueError(value)


def _local_time(value: Any) -> datetime | None:
    """A local date and time; one with a zone is refused, because logs hold what the client's watch showed."""
    try:
        if value is None:
            return None
        found: datetime = datetime.fromisoformat(value) if isinstance(value, str) and len(value) > 10 else _none(value)
    except ValueError:
        raise refusal(f"got {shown(value)}, expected a local date and time such as 2026-01-05T18:03") from None
    if found.tzinfo is not None:
        raise refusal(f"got {shown(value)}, which has a zone", "write the local time alone, such as 2026-01-05T18:03")
    return found


LocalTime = Annotated[
    datetime | None,
    BeforeValidator(_local_time),
    WithJsonSchema({"anyOf": [{"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}"}, {"type": "null"}]}),
]
"""Local, without a zone, as a watch shows it (ISO 8601)."""
Day = Annotated[date, BeforeValidator(_day), WithJsonSchema({"type": "string", "format": "date"})]


class LogSet(Part):
    """One set as done; repetitions are breaths of a hold, of each side where the lift is one limb's."""

    exercise: ExerciseId
    number: Annotated[int, Field(ge=1, le=MOST_SETS)]
    reps: Annotated[int, Field(ge=0, le=MOST_REPS)]
    load: Annotated[float, Field(ge=0, le=MOST_LOAD)] | None = None
    """In the session's unit; null where none was said."""
    rir: Rir | None = None
    side: Side | None = None
    ended: LocalTime = None

    def as_set(self) -> LoggedSet:
        """The set as the log's own value."""
        return LoggedSet(self.exercise, self.number, self.reps, self.load, self.rir, self.side, self.ended)


class LogSession(Part):
    """One session as done, its sets in the order they were done."""

    on: Day
    sets: Many[LogSet]
    unit: Unit = "kg"
    week: Annotated[int, Field(ge=1, le=MOST_WEEKS)] | None = None
    session: Annotated[int, Field(ge=1, le=MOST_SESSIONS)] | None = None
    started: LocalTime = None
    ended: LocalTime = None
    minutes: Annotated[float, Field(ge=0, le=MOST_MINUTES)] | None = None
    how_hard: Annotated[int, Field(ge=0, le=HARDEST)] | None = None
    note: Annotated[str, Field(max_length=MOST_LETTERS)] = ""

    def as_session(self) -> LoggedSession:
        """The session as the log's own value."""
        return LoggedSession(
            on=self.on,
            sets=tuple(done.as_set() for done in self.sets),
            unit=self.unit,
            week=self.week,
            session=self.session,
            started=self.started,
            ended=self.ended,
            minutes=self.minutes,
            how_hard=self.how_hard,
            note=self.note,
        )


class LogUnread(Part):
    """A part of the file that the log was read from which is no set."""

    place: str
    text: str
    why: str = ""


class LogDocument(Part):
    """Sessions as done, and what of their file was not read."""

    # `schema` is a method of pydantic's models: the field has another name inside, and its own in JSON.
    schema_name: Literal["setwright.log/1"] = Field(alias="schema")
    sessions: Many[LogSession]
    unread: Many[LogUnread] = ()


def log_document(sessions: Iterable[LoggedSession], unread: Iterable[UnreadRow] = ()) -> dict[str, Any]:
    """The document of some sessions, every field written."""
    return {
        "schema": SCHEMA,
        "sessions": [_fields(session) for session in sessions],
        "unread": [_fields(row) for row in unread],
    }


def _fields(value: LoggedSession | LoggedSet | UnreadRow) -> dict[str, Any]:
    """A value's fields by name, as JSON holds them."""
    return {field.name: _written(getattr(value, field.name)) for field in fields(value)}


def _written(value: Any) -> Any:
    if isinstance(value, date):
        return value.isoformat()
    return [_fields(part) for part in value] if isinstance(value, tuple) else value
