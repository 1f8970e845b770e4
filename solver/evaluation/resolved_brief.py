"""A brief resolved against the catalogue: every default, unit and look-up settled before anything is evaluated."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TypeVar

from setwright.catalogue.cautions import AgeGroup, ClientLimits
from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.curves import Curves
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.resolved_day import MuscleTarget, ResolvedDay

Answer = TypeVar("Answer")
SOUGHT = ("priority", "normal")
OF_LIMIT = ("novice", "long-day", "efficiency")
"""Thresholds that are a rule's limit under another name, so that a brief's number stands for them too."""
STAND_IN = 3
"""The rank from which an exercise only stands in for a better one."""
HEAVY_LOADS = ("barbell", "plates", "stack")
"""Loads that reach further than a pair of light dumbbells."""
LIFTS_LESS = frozenset(("novice", "older"))
"""The clients whose loads are lighter, so that dumbbells are light for them later."""
NO_LONGEST = 3600
"""Seconds that no rest reaches: the longest one where nobody asks for shorter rests."""
NO_CAP = 40.0
"""Fractional sets that no muscle reaches in a day: the day's cap where the brief turns it off."""


Excluder = Callable[["ResolvedBrief", Exercise, ResolvedDay], bool]
"""Whether a rule excludes an exercise on a day of a brief."""


@dataclass(frozen=True)
class ResolvedBrief:
    """A brief with every default filled in, its catalogue, and what follows from the two."""

    brief: Brief
    catalogue: Catalogue
    curves: Curves
    days: tuple[ResolvedDay, ...]
    muscles: Mapping[str, MuscleTarget]
    goal: str
    pairs: bool
    techniques: bool
    keep_share: float
    adjacent: tuple[tuple[int, int], ...]
    """Pairs of day indices (earlier, later) on consecutive dates, the week's turn included."""
    client_limits: ClientLimits
    """What the client's cautions and age ask of the week, as far as the rules that hold it are on."""
    age_group: AgeGroup | None
    """The age group of the client; None where no age is said, or one of which nothing is asked."""
    excluders: tuple[tuple[str, Excluder], ...] = field(default=(), repr=False, compare=False)
    """(rule id, what it excludes) of every rule that can close an exercise, in the rules' order."""
    _closed: dict[tuple[str, int], tuple[str, ...]] = field(default_factory=dict, repr=False, compare=False)

    @cached_property
    def answers(self) -> dict[tuple[Hashable, ...], object]:
        """What was asked of this brief before, with its answer: see `answered_once`."""
        return {}

    @property
    def experience(self) -> str:
        """novice, intermediate or advanced."""
        return self.brief.client.experience

    @property
    def minimum_dose(self) -> bool:
        """Whether the brief asks for few sets of each exercise: as little as holds what there is, or a lighter week."""
        return self.brief.dose != "usual"

    @cached_property
    def weight_sum(self) -> float:
        """The sum of the muscles' weights, by which the week index is a mean."""
        return sum(m.weight for m in self.muscles.values())

    @cached_property
    def cost_scale(self) -> float:
        """What costs are multiplied by so that they weigh the same in narrow briefs."""
        scale = self.catalogue.defaults.cost_scale
        return min(max(scale.reference / self.weight_sum, scale.least), scale.most)

    def number(self, name: str) -> float:
        """A number of the evidence file, or the brief's own in its place; raises KeyError for an unknown id."""
        return self.curves.numbers[name]

    @cached_property
    def named(self) -> frozenset[str]:
        """Exercises that the brief asks for by name."""
        return frozenset(p.exercise for p in self.brief.pins) | frozenset(self.brief.like)

    @cached_property
    def pinned(self) -> frozenset[str]:
        """Ids of pinned exercises and of their pinned partners."""
        pins = self.brief.pins
        return frozenset(p.exercise for p in pins) | frozenset(p.pair_with for p in pins if p.pair_with)

    # ---- what the brief asks of rests and effort

    @cached_property
    def rest_span(self) -> tuple[int, int]:
        """The shortest and the longest rest after a set, in seconds, that the brief and the client's cautions allow."""
        needed = self.client_limits.rest_least
        if self.off("rest-asked"):
            return needed, NO_LONGEST
        least, most = self.brief.rest_at_least or 0, self.brief.rest_at_most or NO_LONGEST
        return max(needed, least), max(needed, most)

    @property
    def reserve_asked(self) -> int:
        """The fewest repetitions in reserve that the brief asks for."""
        return 0 if self.off("reserve-asked") else self.brief.rir_at_least or 0

    # ---- rules' states and numbers

    def off(self, rule: str) -> bool:
        """Whether the brief turns a rule off."""
        return self.brief.rules.get(rule) == "off"

    def forced(self, rule: str) -> bool:
        """Whether a scored rule is hard, because the brief says so or says nothing and the client is of those named."""
        said = self.brief.rules.get(rule)
        return said == "hard" or (said is None and not self._of_client.isdisjoint(self.catalogue.rules[rule].hard_for))

    @cached_property
    def _of_client(self) -> frozenset[str]:
        """What the client is called where a rule is hard for some: the experience, and the age group's id."""
        return frozenset((self.experience, self.age_group.id) if self.age_group else (self.experience,))

    def cost(self, rule: str, key: str | None = None) -> float:
        """The cost of one unit of a rule's breach in score units, scaled to the brief."""
        numbers = self.catalogue.rules[rule]
        said = self.brief.rules.get(rule)
        points = numbers.cost or 0.0
        if isinstance(said, int | float):
            points = float(said) * (numbers.more[key] / points if key and points else 1.0)
        elif key:
            points = numbers.more[key]
        return points * self.cost_scale * UNITS

    def penalty(self, rule: str, amount: float, key: str | None = None) -> int:
        """The cost of so many units, in whole score units."""
        return round(amount * self.cost(rule, key))

    def limit(self, rule: str, key: str | None = None) -> float:
        """The limit of a hard rule, or one of a rule's other thresholds."""
        numbers = self.catalogue.rules[rule]
        said = self.brief.rules.get(rule)
        if isinstance(said, int | float) and numbers.limit is not None and key in (None, *OF_LIMIT):
            return float(said)
        return numbers.more[key] if key else float(numbers.limit or 0.0)

    @property
    def day_cap(self) -> float:
        """The most fractional sets a muscle can get in a day."""
        return NO_CAP if self.off("muscle-day-cap") else self.limit("muscle-day-cap")

    # ---- like days

    @cached_property
    def like_days(self) -> tuple[tuple[int, ...], ...]:
        """The indices of the days in groups that differ in nothing a rule or a figure of an exercise asks of a day."""
        found: dict[Hashable, list[int]] = {}
        for day in self.days:
            found.setdefault(day.kind, []).append(day.index)
        return tuple(tuple(days) for days in found.values())

    @cached_property
    def _first_alike(self) -> dict[int, int]:
        """Day -> the first day of its group of like days."""
        return {day: days[0] for days in self.like_days for day in days}

    def _for_each_day(self, asked: Callable[[ResolvedDay], Answer]) -> tuple[Answer, ...]:
        """The answer for each day, asked once for like days."""
        answers = {days[0]: asked(self.days[days[0]]) for days in self.like_days}
        return tuple(answers[self._first_alike[day.index]] for day in self.days)

    # ---- what is open

    def excluded_by(self, exercise: Exercise, day: ResolvedDay) -> tuple[str, ...]:
        """The ids of the rules that exclude an exercise on a day; empty when it is open."""
        key = (exercise.id, self._first_alike[day.index])
        if key not in self._closed:
            self._closed[key] = tuple(rule for rule, excludes in self._excluders_on if excludes(self, exercise, day))
        return self._closed[key]

    def open_but_for(self, rule: str, exercise: Exercise, day: ResolvedDay) -> bool:
        """Whether no rule but this one excludes an exercise on a day; the rule itself is not asked."""
        return not any(other != rule and excludes(self, exercise, day) for other, excludes in self._excluders_on)

    @cached_property
    def _excluders_on(self) -> tuple[tuple[str, Excluder], ...]:
        """The rules that can close an exercise and are not turned off, with what they exclude."""
        return tuple((rule, excludes) for rule, excludes in self.excluders if not self.off(rule))

    @cached_property
    def avoided(self) -> frozenset[str]:
        """Ids of the exercises that the brief avoids on every day."""
        return frozenset(self.brief.avoid)

    @cached_property
    def open_on(self) -> tuple[tuple[Exercise, ...], ...]:
        """The exercises open on each day, in the catalogue's order."""
        exercises = self.catalogue.exercises.values()
        return self._for_each_day(lambda day: tuple(e for e in exercises if not self.excluded_by(e, day)))

    def can(self, day: ResolvedDay, wanted: Callable[[Exercise], bool]) -> bool:
        """Whether the day has an open exercise of that kind."""
        return any(wanted(e) for e in self.open_on[day.index])

    def can_somewhere(self, wanted: Callable[[Exercise], bool]) -> bool:
        """Whether some day has an open exercise of that kind."""
        return any(self.can(day, wanted) for day in self.days)

    # ---- derived facts of exercises

    def sought(self, muscle: str) -> bool:
        """Whether a muscle is wanted at normal emphasis or more."""
        target = self.muscles[muscle]
        return target.emphasis in SOUGHT and target.weight > 0

    @cached_property
    def priorities(self) -> tuple[str, ...]:
        """Ids of the muscles at priority."""
        return tuple(m.id for m in self.muscles.values() if m.emphasis == "priority")

    def own_muscle(self, exercise: Exercise) -> str | None:
        """The one muscle an exercise is there for: its only direct one, minor muscles left aside."""
        return self._own_muscles[exercise.id]

    @cached_property
    def _own_muscles(self) -> dict[str, str | None]:
        """Exercise id -> the one muscle it is there for."""
        muscles, found = self.catalogue.muscles, {}
        for exercise in self.catalogue.exercises.values():
            main = [m for m in sorted(exercise.direct) if muscles[m].size != "minor"] or sorted(exercise.direct)
            found[exercise.id] = main[0] if len(main) == 1 else None
        return found

    def light(self, exercise: Exercise, day: ResolvedDay) -> bool:
        """Whether the day's heaviest dumbbell is too light for the exercise's usual repetitions."""
        if exercise.load != "dumbbell" or exercise.light_below is None or day.dumbbell_max is None:
            return False
        lifts_less = not self._of_client.isdisjoint(LIFTS_LESS)
        share = self.number("light-novice-share") if lifts_less else 1.0
        return day.dumbbell_max < share * exercise.light_below

    def ramps_lightly(self, exercise: Exercise, day: ResolvedDay) -> bool:
        """Whether one easier set is ramp-up enough: a lift without a bar that tires little, or with light dumbbells."""
        return (exercise.fatigue == "low" and not exercise.barbell) or self.light(exercise, day)

    def rank(self, exercise: Exercise, day: ResolvedDay) -> int:
        """The exercise's rank on that day: where dumbbells are light, a bar or machine comes first, else one limb."""
        light, loaded = self._light_and_loaded[day.index]
        if exercise.movement in loaded:
            return max(exercise.rank, STAND_IN) if self.light(exercise, day) else exercise.rank
        one_limb = exercise.limb != "both" and exercise.multi_joint and exercise.load == "dumbbell"
        return 1 if one_limb and exercise.rank in (2, 3) and exercise.movement in light else exercise.rank

    @cached_property
    def _light_and_loaded(self) -> tuple[tuple[frozenset[str], frozenset[str]], ...]:
        """For each day the movements where dumbbells are too light for a lift, and those with a bar or machine."""

        def movements(day: ResolvedDay) -> tuple[frozenset[str], frozenset[str]]:
            here = [e for e in self.catalogue.exercises.values() if e.multi_joint and day.items.issuperset(e.needs)]
            light = frozenset(e.movement for e in here if self.light(e, day))
            return light, frozenset(e.movement for e in here if e.rank < STAND_IN and e.load in HEAVY_LOADS)

        return self._for_each_day(movements)

    def second_choice(self, exercise: Exercise, day: ResolvedDay) -> bool:
        """Whether the day's kit has a better-ranked exercise of the same movement."""
        if exercise.id in self.pinned:
            return False
        own = self.rank(exercise, day)
        return own > 1 and self._best_ranks[day.index].get(exercise.movement, own) < own

    @cached_property
    def _best_ranks(self) -> tuple[dict[str, int], ...]:
        """For each day the best rank of each movement's open exercises."""

        def best_ranks(day: ResolvedDay) -> dict[str, int]:
            best: dict[str, int] = {}
            for exercise in self.open_on[day.index]:
                rank = self.rank(exercise, day)
                best[exercise.movement] = min(rank, best.get(exercise.movement, rank))
            return best

        return self._for_each_day(best_ranks)

    def builds(self, exercise: Exercise, day: ResolvedDay) -> bool:
        """Whether a session can be built around an exercise: a main lift that is no second choice there."""
        return exercise.main_lift and not self.second_choice(exercise, day)

    def likes(self, exercise: Exercise) -> bool:
        """Whether the client likes an exercise or a piece of its kit."""
        return exercise.id in self.brief.like or any(item in self.brief.like for item in exercise.needs)

    def dislikes(self, exercise: Exercise) -> bool:
        """Whether the client dislikes an exercise or a piece of its kit."""
        return exercise.id in self.brief.dislike or any(item in self.brief.dislike for item in exercise.needs)

    @cached_property
    def full_body(self) -> bool:
        """Whether the week has so few days that each should train the whole body."""
        return len(self.days) <= self.limit("full-session", "most-days")
