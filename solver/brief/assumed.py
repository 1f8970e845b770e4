"""What a brief leaves unsaid and what is taken in its place, one plain sentence each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final, Literal

from setwright.catalogue.cautions import age_group_of
from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.client_limits import client_limits_of
from setwright.solver.brief.schema import Brief

NO_CAUTIONS: Final = "cautions: none"
NAMED: Final = 4
"""Lifts or items of one list that are named; of the rest there is the number."""


@dataclass(frozen=True)
class Assumption:
    """One thing taken where nothing was said; of the kind "health" where the sentence is a note on the client's health,
    which no sheet for others may carry."""

    kind: Literal["plan", "health"]
    text: str


def assumptions(said: Brief, settled: Brief, raw: Mapping[str, Any], catalogue: Catalogue) -> tuple[Assumption, ...]:
    """Every assumption made between the brief as said and as settled, in a fixed order."""
    client = raw.get("client", {})
    return (
        *_of_days(said, settled),
        *_of_muscle_days(settled, catalogue),
        *_of_place(said, settled, catalogue),
        *_of_lifts(settled, catalogue),
        *_of_owned(settled),
        *(() if said.goal else (Assumption("plan", f"goal: {settled.goal}"),)),
        *_of_sets(said),
        *_of_muscles(settled, catalogue),
        *_of_other(raw),
        *_of_client(client, settled),
        *_of_health(said, settled, catalogue),
    )


def _of_days(said: Brief, settled: Brief) -> Iterator[Assumption]:
    if said.any_order:
        if "rest_days_between" not in said.model_fields_set:
            yield Assumption("plan", f"rest days between sessions: {said.rest_days_between}")
    elif any(day.weekday is None for day in said.days):
        weekdays = ", ".join((day.weekday or "").capitalize() for day in settled.days)
        yield Assumption("plan", f"days: {weekdays}")


def _of_muscle_days(settled: Brief, catalogue: Catalogue) -> Iterator[Assumption]:
    """What a muscle that is named for a day, or rested on it, leaves open."""
    for name in dict.fromkeys(name for day in settled.days for name in (*(day.trained or ()), *(day.rested or ()))):
        called = catalogue.muscle_or_group(name).name.lower()
        on, off = (_days_of(settled, field, name) for field in ("trained", "rested"))
        rest = f"no direct sets on {off}" if off else "other days may have it too"
        yield Assumption("plan", f"{called}: " + "; ".join([*([f"direct sets on {on}"] if on else []), rest]))


def _days_of(settled: Brief, field: str, name: str) -> str:
    """The names of the days whose field holds a name: Mon and Thu."""
    named = enumerate(settled.days)
    found = [day.weekday or f"session {place + 1}" for place, day in named if name in (getattr(day, field) or ())]
    return " and ".join(day.capitalize() for day in found)


def _of_place(said: Brief, settled: Brief, catalogue: Catalogue) -> Iterator[Assumption]:
    if said.equipment is None and isinstance(settled.equipment, str):
        open_days = [day.weekday or "" for day in settled.days if day.equipment is None]
        partly = len(open_days) < len(settled.days) and not settled.any_order
        on = f" on {', '.join(day.capitalize() for day in open_days)}" if partly else ""
        yield Assumption("plan", f"place: {catalogue.kits[settled.equipment].name}{on}")
    if settled.owned.dumbbell_max is not None:
        return
    places = (settled.equipment, *(day.equipment for day in settled.days))
    words = [word for place in places if place for word in ((place,) if isinstance(place, str) else place)]
    for word in dict.fromkeys(words):
        kit = catalogue.kits.get(word)
        if kit is not None and kit.dumbbell_max is not None:
            yield Assumption("plan", f"dumbbells in the {kit.name}: up to {kit.dumbbell_max:g} kg")


def _of_lifts(settled: Brief, catalogue: Catalogue) -> Iterator[Assumption]:
    """What is read as not there, avoided or disliked, by name: a phrase such as `no squats` stands for many lifts."""
    names = {e.id: e.name.lower() for e in catalogue.exercises.values()}
    names |= {item.id: item.name.lower() for item in catalogue.items.values()}
    for said, ids in (("not there", settled.without), ("avoided", settled.avoid), ("disliked", settled.dislike)):
        known = [names[id] for id in ids if id in names]
        more = f" and {len(known) - NAMED} more" if len(known) > NAMED + 1 else ""
        if known:
            yield Assumption("plan", f"{said}: {', '.join(known[:NAMED] if more else known)}{more}")


def _of_owned(settled: Brief) -> Iterator[Assumption]:
    """What is owned and not used where a week names no loads; what is taken as owned where it does."""
    unit = settled.client.unit
    if settled.lifts is not None:
        if not settled.owned.plates:
            yield Assumption("plan", f"bars and plates: the usual ones in {unit}")
        if settled.owned.dumbbell_step is None:
            yield Assumption("plan", f"dumbbells: the usual steps in {unit}")
        return
    if settled.owned.plates:
        plates = ", ".join(f"{plate:g}" for plate in settled.owned.plates)
        yield Assumption("plan", f"plates of {plates} {unit}: not used, the week names no loads")
    if settled.owned.dumbbell_step is not None:
        step = f"{settled.owned.dumbbell_step:g} {unit}"
        yield Assumption("plan", f"dumbbells in steps of {step}: not used, the week names no loads")


def _of_sets(said: Brief) -> Iterator[Assumption]:
    """What follows from the rests and the repetitions in reserve that are asked for."""
    if said.rest_at_most is not None:
        yield Assumption("plan", f"rests: at most {said.rest_at_most} s after every set, in pairs after each round")
    if said.rest_at_least is not None:
        pairs = "in pairs after each round" if said.pairs else "so no pairs"
        yield Assumption("plan", f"rests: at least {said.rest_at_least} s after every set, {pairs}")
    if said.rir_at_least and said.techniques is None:
        yield Assumption(
            "plan", f"at least {said.rir_at_least} RIR: no drop sets or rest-pause, which end near failure"
        )


def _of_muscles(settled: Brief, catalogue: Catalogue) -> Iterator[Assumption]:
    if not settled.muscles:
        yield Assumption("plan", "muscles: every muscle at normal")
    for name, ask in settled.muscles.items():
        group = catalogue.groups.get(name)
        if group is None or ask.emphasis != "priority" or not group.normal_when_priority:
            continue
        first = " and ".join(catalogue.muscles[m].name.lower() for m in group.priority)
        rest = " and ".join(catalogue.muscles[m].name.lower() for m in group.normal_when_priority)
        yield Assumption("plan", f"{group.name.lower()}: {first} at priority, {rest} at normal")


def _of_other(raw: Mapping[str, Any]) -> Iterator[Assumption]:
    for row in raw.get("other", ()):
        if "regions" not in row:
            yield Assumption(
                "plan", f"{row.get('name') or 'other activity'} on {row['weekday'].capitalize()}: hard on the legs"
            )


def _of_client(client: Mapping[str, Any], settled: Brief) -> Iterator[Assumption]:
    if "experience" not in client:
        yield Assumption("plan", f"experience: {settled.client.experience}")
    if "trains_alone" not in client:
        yield Assumption("plan", "trains alone: no")
    if "cautions" not in client:
        yield Assumption("plan", NO_CAUTIONS)
    if "unit" not in client:
        yield Assumption("plan", f"unit: {settled.client.unit}")


def _of_health(said: Brief, settled: Brief, catalogue: Catalogue) -> Iterator[Assumption]:
    """What is taken of the client's cautions and age, and what the brief asks for and they leave out."""
    times = Counter(caution.tag for caution in said.client.cautions)
    for caution in settled.client.cautions:
        if not caution.said_by:
            yield Assumption("health", f"caution {caution.tag}: as the client says, not a diagnosis")
        if times[caution.tag] > 1:
            yield Assumption("health", f"caution {caution.tag}: said {times[caution.tag]} times, taken once")
    age, limits = settled.client.age, client_limits_of(settled, catalogue)
    if age is not None:
        group = age_group_of(age, catalogue.ages)
        yield Assumption("health", f"age {age}: {group.name.lower() if group else 'changes nothing in the week'}")
    if settled.techniques and limits.techniques_off:
        yield Assumption("health", "drop sets and rest-pause: asked for, left out for the client's cautions or age")
    if settled.rest_at_most is not None and settled.rest_at_most < limits.rest_least:
        asked = f"rests of at most {settled.rest_at_most} s: asked for"
        yield Assumption("health", f"{asked}, longer because a caution asks for {limits.rest_least} s")
    if settled.pairs and limits.rest_least:
        yield Assumption("health", "pairs: asked for, left out because a caution asks for rest after every set")
