"""From a brief to its resolved form: defaults of goals, days, kits and muscles filled in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from setwright.catalogue.cautions import AgeGroup, age_group_of
from setwright.catalogue.defaults import Band, Defaults
from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.client_limits import client_limits_of
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.schema import Brief, DayAsk
from setwright.solver.evaluation.clock import warm_up_seconds
from setwright.solver.evaluation.curves import Curves
from setwright.solver.evaluation.resolved_brief import NO_LONGEST, Excluder, ResolvedBrief
from setwright.solver.evaluation.resolved_day import MuscleTarget, ResolvedDay

WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
CLOCK_NUMBERS = {
    "seconds_per_rep": "seconds-per-rep",
    "ramp_lower": "ramp-lower-seconds",
    "ramp_push": "ramp-push-seconds",
    "ramp_pull": "ramp-pull-seconds",
    "ramp_light": "ramp-light-seconds",
    "pair_change": "pair-change-seconds",
}
WIDE_OPEN = 999.0
KG_IN_LB = 0.45359237
"""The international pound, in kg (exact by definition)."""


def resolve_with(brief: Brief, catalogue: Catalogue, excluders: tuple[tuple[str, Excluder], ...]) -> ResolvedBrief:
    """A brief, whose words are already the catalogue's, with every default settled and the rules that exclude."""
    curves = Curves(clock_numbers(brief, catalogue))
    goal = brief.goal or "balanced"
    limits, group = client_limits_of(brief, catalogue), age_group_of(brief.client.age, catalogue.ages)
    days = tuple(resolved_day(i, day, brief, catalogue, curves.numbers) for i, day in enumerate(brief.days))
    return ResolvedBrief(
        brief=brief,
        catalogue=catalogue,
        curves=curves,
        days=days,
        muscles=muscle_targets(brief, catalogue, goal, group),
        goal=goal,
        pairs=pairs_open(brief, goal) and not limits.rest_least,
        techniques=techniques_open(brief, goal) and not limits.techniques_off,
        keep_share=brief.keep_share if brief.keep_share is not None else catalogue.defaults.keep_share,
        adjacent=adjacent_days(brief),
        client_limits=limits,
        age_group=group,
        excluders=excluders,
    )


def clock_numbers(brief: Brief, catalogue: Catalogue) -> Mapping[str, float]:
    """The evidence numbers with the brief's own clock laid over them."""
    numbers = {key: number.value for key, number in catalogue.evidence.items()}
    for field, name in CLOCK_NUMBERS.items():
        said = getattr(brief.clock, field)
        if said is not None:
            numbers[name] = float(said)
    return numbers


def pairs_open(brief: Brief, goal: str) -> bool:
    """Pairs: as asked, else not in growth, nor where rests are asked to be long."""
    return brief.pairs if brief.pairs is not None else goal != "growth" and brief.rest_at_least is None


def techniques_open(brief: Brief, goal: str) -> bool:
    """Drop sets and rest-pause: as asked, else not in growth, for novices or where repetitions are kept in reserve."""
    if brief.techniques is not None:
        return brief.techniques
    return goal != "growth" and brief.client.experience != "novice" and not brief.rir_at_least


def resolved_day(
    index: int, day: DayAsk, brief: Brief, catalogue: Catalogue, numbers: Mapping[str, float]
) -> ResolvedDay:
    """One day with its kit, warm-up and limits in seconds."""
    kit = day.equipment if day.equipment is not None else brief.equipment
    items, heaviest = equipment_of(kit, catalogue)
    items -= frozenset((*brief.without, *(day.without or ())))
    if brief.owned.safeties:
        items |= {"safeties"}
    kept = brief.client.cautions or age_group_of(brief.client.age, catalogue.ages)
    # Someone with a caution, or of an age group, warms up as for growth and gives nothing of it up.
    goal = "growth" if kept else brief.goal or "balanced"
    said = brief.clock.warm_up
    warm_up = said if said is not None else warm_up_seconds(day.minutes, goal, numbers)
    give = min(round(numbers["warm-up-give-seconds"]), warm_up - round(numbers[f"warm-up-least-{goal}"]))
    own = brief.owned.dumbbell_max
    if own is not None and brief.client.unit == "lb":
        own *= KG_IN_LB
    return ResolvedDay(
        index=index,
        weekday=None if brief.any_order else day.weekday,
        minutes=day.minutes,
        limit=60 * day.minutes - (brief.clock.spare or 0),
        warm_up=warm_up,
        warm_up_give=0 if kept else max(0, give),
        items=items,
        dumbbell_max=own if own is not None else heaviest,
        focus=None if day.focus == "full-body" else day.focus,
        closed_regions=closed_regions(day, brief),
        avoided=frozenset(day.avoid or ()),
        rested=rested_muscles(day, catalogue),
        trained=tuple((name, catalogue.muscles_of(name)) for name in day.trained or ()),
        missed=bool(day.missed),
        last_rest=min(shortest_rest(brief.goal or "balanced", catalogue), brief.rest_at_most or NO_LONGEST),
    )


def shortest_rest(goal: str, catalogue: Catalogue) -> int:
    """The shortest rest in seconds that a lift or a pair may have under a goal."""
    alone = catalogue.defaults.rests[goal].values()
    pairs = (catalogue.defaults.pair_rests, catalogue.defaults.single_pair_rests, catalogue.defaults.heavy_pair_rests)
    return min(rest for rests in (*alone, *(kind.get(goal, ()) for kind in pairs)) for rest in rests)


def equipment_of(said: str | tuple[str, ...] | None, catalogue: Catalogue) -> tuple[frozenset[str], float | None]:
    """The items at hand and the heaviest dumbbell, from kit or item ids; nothing said is a commercial gym."""
    words = ("commercial-gym",) if said is None else (said,) if isinstance(said, str) else said
    items: set[str] = set()
    heaviest: float | None = None
    for word in words:
        kit = catalogue.kits.get(word)
        items |= kit.items if kit else {word}
        if kit and kit.dumbbell_max is not None:
            heaviest = max(heaviest or 0.0, kit.dumbbell_max)
    return frozenset(items), heaviest


def closed_regions(day: DayAsk, brief: Brief) -> tuple[str, ...]:
    """Regions that sport or labour on this day or the next keeps free of heavy work."""
    if day.weekday is None or brief.any_order:
        return ()
    number = WEEKDAYS.index(day.weekday)
    near = {WEEKDAYS[number], WEEKDAYS[(number + 1) % 7]}
    return tuple(sorted({region for other in brief.other if other.weekday in near for region in other.regions}))


def rested_muscles(day: DayAsk, catalogue: Catalogue) -> frozenset[str]:
    """The muscles that a day rests, its groups taken apart."""
    return frozenset().union(*(catalogue.muscles_of(name) for name in day.rested or ()))


def adjacent_days(brief: Brief) -> tuple[tuple[int, int], ...]:
    """Pairs of sessions on consecutive dates; sessions without weekdays follow each other by rest days."""
    count = len(brief.days)
    if brief.any_order or any(day.weekday is None for day in brief.days):
        return tuple((i, i + 1) for i in range(count - 1)) if brief.rest_days_between == 0 else ()
    numbers = [WEEKDAYS.index(day.weekday) for day in brief.days if day.weekday]
    return tuple((i, j) for i in range(count) for j in range(count) if i != j and (numbers[j] - numbers[i]) % 7 == 1)


def muscle_targets(
    brief: Brief, catalogue: Catalogue, goal: str, group: AgeGroup | None = None
) -> dict[str, MuscleTarget]:
    """Every muscle's emphasis, weight and band; an age group may ask that the band begin higher.

    A lighter week keeps the emphases, and its bands begin no higher than those of hold.
    """
    asked = expand_muscles(brief, catalogue)
    defaults, weights = catalogue.defaults, catalogue.defaults.weights
    bands = (defaults.novice_bands if brief.client.experience == "novice" else defaults.bands)[goal]
    found: dict[str, MuscleTarget] = {}
    for muscle in catalogue.muscles.values():
        ask = asked.get(muscle.id)
        minor = muscle.size == "minor"
        if ask is None:
            emphasis = "hold" if brief.dose == "minimum" else "normal"
            target = unsaid(muscle.id, emphasis, minor, muscle.default_weight * weights[emphasis])
        else:
            emphasis = ask.emphasis or "normal"
            if brief.dose == "minimum" and emphasis in ("normal", "priority"):
                emphasis = "hold"
            target = MuscleTarget(muscle.id, emphasis, weights[emphasis], 0.0, WIDE_OPEN)
        if emphasis != "none" and not (ask is None and minor):
            low, high = band_of(muscle.id, emphasis, goal, bands, defaults, brief.client.experience)
            if brief.dose == "lighter":
                low = min(low, bands["hold"][0])
            low = max(low, group.least_sets if group else 0.0)
            target = replace(target, low=low, high=max(low, high))
        if ask is not None:
            target = exact(target, ask.at_least, ask.at_most, ask.days_at_least or 0)
        found[muscle.id] = target
    return found


def unsaid(muscle: str, emphasis: str, minor: bool, weight: float) -> MuscleTarget:
    """A muscle that the brief does not name; minor ones are counted, not sought."""
    if minor:
        return MuscleTarget(muscle, "counted", 0.0, 0.0, WIDE_OPEN)
    return MuscleTarget(muscle, emphasis, weight, 0.0, WIDE_OPEN)


def band_of(
    muscle: str, emphasis: str, goal: str, bands: Mapping[str, Band], defaults: Defaults, experience: str
) -> Band:
    """The band in weekly sets of a muscle at an emphasis."""
    minor = defaults.minor_growth
    if goal == "growth" and experience != "novice" and emphasis == "normal" and muscle in minor.muscles:
        return minor.normal
    return bands[emphasis]


def exact(target: MuscleTarget, at_least: float | None, at_most: float | None, days: int) -> MuscleTarget:
    """The target with the brief's own band, whose ends are hard."""
    if at_least is None and at_most is None:
        return replace(target, days_at_least=days)
    low = at_least if at_least is not None else min(target.low, at_most or 0.0)
    high = at_most if at_most is not None else max(target.high, at_least or 0.0)
    return replace(
        target,
        low=low,
        high=high,
        exact_low=at_least is not None,
        exact_high=at_most is not None,
        days_at_least=days,
    )
