"""The clauses about muscles of a weekday: `train chest on mon`, `train legs only on fri`, `rest legs on wed`."""

from __future__ import annotations

from typing import Any, Final

from setwright.solver.brief.defaults import SPREAD
from setwright.solver.brief.phrase.clauses.choice_clauses import EVERY_DAY
from setwright.solver.brief.phrase.clauses.muscle_clauses import MUSCLES
from setwright.solver.brief.phrase.draft import BriefDraft, MuscleDays
from setwright.solver.brief.phrase.durations import at_duration
from setwright.solver.brief.phrase.token_reader import TokenReader

_KINDS: Final = {"train": "trained", "rest": "rested"}


def muscle_day_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read which muscles a weekday has or rests; whether that stood here."""
    start = reader.position
    word = reader.take_any(_KINDS)
    names = _names(reader) if word else ()
    only = reader.take("only") and word == "train"
    days = _days(reader) if names and reader.take("on") else ()
    if not word or not days or at_duration(reader):
        reader.position = start
        return False
    draft.muscle_days.append(MuscleDays("only" if only else _KINDS[word], names, days, reader.text_from(start)))
    return True


def _names(reader: TokenReader) -> tuple[str, ...]:
    """Step over muscles and groups joined by `and`; none where no name stands after one of them."""
    found: list[str] = []
    while match := reader.take_match(MUSCLES):
        found.append(match.id)
        if not reader.take("and"):
            return tuple(found)
    return ()


def _days(reader: TokenReader) -> tuple[str, ...]:
    """Step over weekdays, with or without `and` between them."""
    found: list[str] = []
    while day := reader.weekday():
        reader.position += 1
        found.append(day)
        if reader.sees("and") and reader.weekday(1):
            reader.position += 1
    return tuple(found)


def put_muscle_days(reader: TokenReader, draft: BriefDraft) -> None:
    """Give the days what is said of their muscles; a weekday without training is a fault."""
    rows = draft.raw.get("days", ())
    if not rows or not (draft.muscle_days or any(pin.get("day") in EVERY_DAY for pin in draft.raw.get("pins", ()))):
        return
    if draft.raw.get("any_order") and draft.muscle_days:
        said = draft.muscle_days[0].said
        reader.fault(f"'{said}' names a weekday, but the days have none", "drop it, or any order")
        return
    weekdays = [row["weekday"] for row in rows if "weekday" in row] or SPREAD.get(len(rows), ())
    by_day = dict(zip(weekdays, rows, strict=False))
    if "pins" in draft.raw:
        draft.raw["pins"] = [each for pin in draft.raw["pins"] for each in _on_days(reader, pin, list(by_day))]
    for asked in draft.muscle_days:
        if wrong := [day for day in asked.days if day not in by_day]:
            reader.fault(
                f"'{asked.said}' names {wrong[0]}, which is not a training day",
                f"choose one of {', '.join(by_day)}",
            )
            continue
        for day, row in by_day.items():
            field = asked.field_of(day)
            if field:
                row[field] = list(dict.fromkeys((*row.get(field, ()), *asked.names)))


def _on_days(reader: TokenReader, pin: dict[str, Any], days: list[str]) -> list[dict[str, Any]]:
    """A pin of every day as one for each training day; any other as it is."""
    if pin.get("day") not in EVERY_DAY:
        return [pin]
    if pin["day"] == "both days" and len(days) != 2:
        reader.fault(f"'both days' is said of {len(days)} days", "write on every day, or name the weekdays")
    return [pin | {"day": day} for day in days]
