"""Terms from a raw brief, and weeks from compact lines such as "barbell-curl 3 drop, leg-press most rest=over"."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.order import in_order
from setwright.solver.evaluation.prescriptions import (
    pair_rests,
    reps_of,
    rests_of,
    rir_of,
    set_span,
    techniques_of,
)
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.rulebook import resolve

CATALOGUE = load_catalogue()
Days = tuple[str, ...]


def days(*said: str | int, **more: Any) -> list[dict[str, Any]]:
    """Days from "mon tue" at so many minutes: days("mon tue", 45)."""
    weekdays, minutes = said
    return [{"weekday": day, "minutes": minutes, **more} for day in str(weekdays).split()]


def terms_of(**raw: Any) -> ResolvedBrief:
    """A brief resolved; without pairs where it does not ask for them, but in efficiency."""
    raw.setdefault("days", days("mon thu", 60))
    raw.setdefault("pairs", raw.get("goal") == "efficiency")
    return resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE)


def week_of(resolved: ResolvedBrief, lines: Days, sort: bool = True) -> Week:
    """The week of these days' lines, each day in its due order unless `sort` is off."""
    found = []
    for day, text in zip(resolved.days, lines, strict=True):
        entries = {
            e.exercise: e for e in (entry_of(resolved, day.index, line) for line in text.split(",") if line.strip())
        }
        order = [(CATALOGUE.exercises[e.exercise], e.partner) for e in entries.values()]
        names = [e.id for e in in_order(resolved, order)] if sort else list(entries)
        found.append(tuple(entries[name] for name in names))
    return Week(tuple(found))


def entry_of(resolved: ResolvedBrief, day: int, line: str) -> Entry:
    """`exercise sets [drop | rest=.. | reps=.. | rir=.. | with=..]`; most, over, least and under speak of the rules."""
    name, sets, *more = line.split()
    exercise = CATALOGUE.exercises[name]
    said = dict(word.split("=") if "=" in word else (word, "") for word in more)
    low, high = set_span(resolved, exercise)
    spoken = {"least": low, "under": low - 1, "most": high, "over": high + 1}
    rests = pair_rests(resolved, exercise) if "with" in said else rests_of(resolved, exercise)
    asked = said.get("rest", "")
    rest = {"most": rests[-1], "over": rests[-1] + 1}.get(asked, int(asked) if asked.isdecimal() else rests[0])
    technique, drops = (techniques_of(resolved, exercise) or (("drop", 2),))[0] if "drop" in said else ("straight", 0)
    reps = reps_of(resolved, exercise, resolved.days[day])
    if "reps" in said:
        first, last = said["reps"].split("-")
        reps = (int(first), int(last))
    rir = {"": rir_of(resolved, exercise), "over": rir_of(resolved, exercise) + 1}.get(said.get("rir", ""))
    rir = int(said["rir"]) if rir is None else rir
    count = spoken[sets] if sets in spoken else int(sets)
    return Entry(name, count, reps, rir, rest, technique, drops, said.get("with"))


def audited(resolved: ResolvedBrief, lines: Days, sort: bool = True) -> Audit:
    return audit(resolved, week_of(resolved, lines, sort))


def found(result: Audit, rule: str, about: str = "", day: int | None = None) -> list[Finding]:
    """The audit's findings of one rule, about one muscle, movement or region and on one day where they are named."""
    return [
        f
        for f in (*result.broken, *result.charged)
        if f.rule == rule and about in ("", f.subject) and (day is None or day in f.days)
    ]
