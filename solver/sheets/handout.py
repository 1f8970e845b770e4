"""What a client is handed, as one value from which every format is written; it holds no health note."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.brief.schema import Brief
from setwright.solver.brief.understand import Understood
from setwright.solver.reckoning.doubt import intervals, week_interval
from setwright.solver.reckoning.resolve import WIDE_OPEN, resolve
from setwright.solver.reckoning.terms import DayTerms, MuscleTerms, Terms
from setwright.solver.reckoning.view import WHOLE, Line, View
from setwright.solver.sheets.caution import CAUTION, CLEARANCE, clearance_needed
from setwright.solver.sheets.coach import DEFAULT_COACH, Coach
from setwright.solver.sheets.document import groups
from setwright.solver.sheets.inert import one_line, web_link
from setwright.solver.sheets.parts import seconds_by_kind
from setwright.solver.sheets.planned import Planned, planned_of
from setwright.solver.sheets.private import open_part
from setwright.solver.sheets.ramp import ramp_steps, ramp_ups
from setwright.solver.sheets.reading import read_week
from setwright.solver.sheets.reasons import reasons
from setwright.solver.sheets.words import clock, listed, note, span, whole_minutes

GOALS = {
    "growth": "muscle growth, with the long rests that it asks for",
    "efficiency": "the most from the fewest minutes",
    "balanced": "a balance of muscle growth and time",
}
UNTITLED = "Training week"


@dataclass(frozen=True)
class CardLine:
    """One line of a card, in words; rests as m:ss, 0:00 for the first of a pair."""

    label: str
    """A, or A1 and A2 in a pair."""
    exercise: str
    """The exercise's id."""
    name: str
    setting: str
    cue: str
    link: str | None
    sets: int
    reps: str
    rir: int
    rest: str
    technique: str
    load: str | None
    swaps: tuple[str, ...]
    """Names of what may stand in for it."""
    ramp_up: str
    why: str
    partner: str = ""
    """The name of the exercise it is done in turn with, or nothing."""


@dataclass(frozen=True)
class Session:
    """One day of the week; `minutes` used (whole, rounded up) of those `given`."""

    number: int
    weekday: str | None
    title: str
    minutes: int
    given: int
    seconds: int
    place: str
    warm_up: str
    lines: tuple[CardLine, ...]
    seconds_by_kind: tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class MuscleRow:
    """One muscle's week: fractional sets, days of direct work, band (upper end None: open), index."""

    id: str
    name: str
    emphasis: str
    sets: float
    days: int
    band: tuple[float, float | None] | None
    index: int
    interval: tuple[int, int]


@dataclass(frozen=True)
class Handout:
    """A week as handed over: sessions, muscles, what it is worth, why it is so, the caution, the coach."""

    title: str
    client: str
    """The client's code; empty where none is said."""
    week: str
    goal: str
    asked: str
    sessions: tuple[Session, ...]
    muscles: tuple[MuscleRow, ...]
    index: float
    interval: tuple[int, int]
    why: tuple[str, ...]
    left_out: tuple[str, ...]
    """Names of exercises, to be read as left out by the coach, for whatever reason."""
    caution: str
    review: date | None
    start: date | None
    """Each session falls on its first weekday on or after this day; None where no date is said."""
    coach: Coach
    made_by: str
    document: Mapping[str, Any]
    """The week's JSON without private parts."""
    any_order: bool = False


def handout_of(
    document: Any,
    catalogue: Catalogue,
    coach: Coach = DEFAULT_COACH,
    start: date | None = None,
    where: str = "week",
    clearance_due: bool = True,
) -> Handout:
    """The handout of a week's document; raises UsageFault with every fault.

    While its client needs a clearance that is not recorded it raises SetwrightError, unless `clearance_due` is
    False: for a copy that stays with the coach.
    """
    understood, week = read_week(document, catalogue, where)
    if clearance_due:
        refuse_uncleared(document, understood, catalogue, where)
    view = View(resolve(understood.brief, catalogue), week)
    planned = planned_of(document, view, where)
    brief, terms, start = understood.brief, view.terms, start or coach.start
    return Handout(
        title=one_line(open_part(document, catalogue)["brief"]["title"]) or UNTITLED,
        client=one_line(brief.client.code),
        week=f"{coach.words['week']} 1",
        goal=goal_words(terms, coach),
        asked=asked_words(brief),
        sessions=tuple(session_of(view, day, coach, planned) for day in terms.days),
        muscles=muscle_rows(view, coach),
        index=round(view.stimulus, 1),
        interval=week_interval(view),
        why=reasons(view, planned.costs, muscle_names(catalogue, coach)),
        left_out=tuple(exercise_name(catalogue.exercises[e], coach) for e in brief.avoid if e in catalogue.exercises),
        caution=f"{CAUTION} {coach.caution}".strip(),
        review=review_day(start, coach),
        start=start,
        coach=coach,
        made_by=made_by_words(document),
        document=open_part(document, catalogue),
        any_order=brief.any_order,
    )


def refuse_uncleared(document: Mapping[str, Any], understood: Understood, catalogue: Catalogue, where: str) -> None:
    """Raise while the week's client needs a clearance that is not recorded, or while nothing is said of it."""
    flag, brief = document.get("clearance_needed"), understood.brief
    if not isinstance(flag, bool):
        said = f"got {flag!r}, expected true or false"
        raise UsageFault(Fault(f"{where}: clearance_needed", said, "name a week written with --json"))
    if clearance_needed(brief, catalogue) or (flag and brief.client.clearance is None):
        raise SetwrightError(Fault(where, "no sheet is written: a clearance is missing", f"{CLEARANCE} Plan it again"))


# ---- a session


def session_of(view: View, day: DayTerms, coach: Coach, planned: Planned) -> Session:
    """One day's card."""
    seconds = view.seconds(day.index)
    busy = bool(view.on[day.index])
    kinds = seconds_by_kind(view, day.index) if busy else {}
    return Session(
        number=day.index + 1,
        weekday=day.weekday,
        title=coach.words[day.weekday] if day.weekday else f"{coach.words['session']} {day.index + 1}",
        minutes=whole_minutes(seconds) if busy else 0,
        given=day.minutes,
        seconds=seconds if busy else 0,
        place=place_words(view.terms, day.index),
        warm_up=f"{clock(view.warm_up(day.index))} easy whole-body movement" if busy else "",
        lines=card_lines(view, day.index, coach, planned),
        seconds_by_kind=tuple(kinds.items()),
    )


def card_lines(view: View, day: int, coach: Coach, planned: Planned) -> tuple[CardLine, ...]:
    """A day's lines in order."""
    found = groups(view, day)
    paired = {g["group"] for g in found if g["place"] == 2}
    ramps = ramp_ups(view, day)
    return tuple(
        card_line(view, line, g["group"], g["place"] if g["group"] in paired else 0, ramps, coach, planned)
        for g, line in zip(found, view.on[day], strict=True)
    )


def card_line(
    view: View,
    line: Line,
    letter: str,
    turn: int,
    ramps: Mapping[int, tuple[tuple[int, int], ...]],
    coach: Coach,
    planned: Planned,
) -> CardLine:
    """One line; `turn` is 1 or 2 in a pair, else 0."""
    e, entry, exercises = line.exercise, line.entry, view.terms.catalogue.exercises
    said = planned.lines[line.day.index][line.place]
    return CardLine(
        label=f"{letter}{turn or ''}",
        exercise=e.id,
        name=exercise_name(e, coach),
        setting=e.setting,
        cue=e.cue,
        link=web_link(e.link),
        sets=entry.sets,
        reps=span(*entry.reps) + ("/side" if e.limb != "both" or e.alternating else ""),
        rir=entry.rir,
        rest="0:00" if turn == 1 else clock(entry.rest),
        technique=note(entry, e),
        load=said.load,
        swaps=tuple(exercise_name(exercises[swap], coach) for swap in said.swaps),
        ramp_up=ramp_steps(e, ramps[line.place]) if line.place in ramps else "",
        why=said.why,
        partner=exercise_name(exercises[entry.partner], coach) if entry.partner else "",
    )


def exercise_name(exercise: Exercise, coach: Coach) -> str:
    return one_line(coach.exercises.get(exercise.id, exercise.name))


def place_words(terms: Terms, day: int) -> str:
    """The kit of a day in words."""
    catalogue, brief = terms.catalogue, terms.brief
    said = brief.days[day].equipment or brief.equipment or ()
    words = (said,) if isinstance(said, str) else said
    return listed(catalogue.kits[w].name if w in catalogue.kits else catalogue.items[w].name.lower() for w in words)


# ---- the week


def muscle_rows(view: View, coach: Coach) -> tuple[MuscleRow, ...]:
    """Every muscle that is sought or trained."""
    sure, names = intervals(view), view.terms.catalogue.muscles
    return tuple(
        MuscleRow(
            id=m.id,
            name=coach.muscles.get(m.id, names[m.id].name),
            emphasis=m.emphasis,
            sets=round(view.weekly_sets(m.id) / WHOLE, 2),
            days=view.direct_days(m.id),
            band=band_of(m),
            index=round(view.index(m.id)),
            interval=sure[m.id],
        )
        for m in view.terms.muscles.values()
        if m.weight or view.weekly_sets(m.id)
    )


def band_of(muscle: MuscleTerms) -> tuple[float, float | None] | None:
    """The band of weekly sets, or None for a muscle that is only counted."""
    if muscle.high >= WIDE_OPEN:
        return (muscle.low, None) if muscle.low else None
    return muscle.low, muscle.high


def muscle_names(catalogue: Catalogue, coach: Coach) -> dict[str, str]:
    """Each muscle's name inside a sentence."""
    return {m.id: coach.muscles.get(m.id, m.name.lower()) for m in catalogue.muscles.values()}


def goal_words(terms: Terms, coach: Coach) -> str:
    """The goal as a client says it, with what comes first."""
    names = muscle_names(terms.catalogue, coach)
    first = f"; {listed(names[m] for m in terms.priorities)} first" if terms.priorities else ""
    return f"{GOALS[terms.goal]}{first}"


def asked_words(brief: Brief) -> str:
    """3 days x 40 min, or the minutes of each day."""
    minutes = [day.minutes for day in brief.days]
    each = f"{minutes[0]}" if len(set(minutes)) == 1 else ", ".join(map(str, minutes))
    return f"{len(minutes)} day{'s' if len(minutes) > 1 else ''} x {each} min"


def review_day(start: date | None, coach: Coach) -> date | None:
    """When the coach looks at the plan again, where start and span are both said."""
    if start is None or coach.review_weeks is None:
        return None
    return start + timedelta(weeks=coach.review_weeks)


def made_by_words(document: Mapping[str, Any]) -> str:
    made = document.get("made_by")
    number = made.get("version") if isinstance(made, Mapping) else None
    return f"setwright {number}" if isinstance(number, str) else "setwright"
