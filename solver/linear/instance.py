"""The instance of a brief: classes of exercises that no rule tells apart, over groups of like days."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.pairing.pairs import WEIGHTS, effect_of_partner, fits, places
from setwright.solver.evaluation.pairing.partner_effect import NO_EFFECT, PartnerEffect
from setwright.solver.evaluation.prescriptions import Prescription, make, prescriptions_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay


@dataclass(frozen=True)
class ExerciseClass:
    """Exercises that the model cannot tell apart, and the prescriptions they have on each kind of day."""

    members: tuple[Exercise, ...]
    prescriptions: tuple[tuple[Prescription, ...], ...]
    """For each group of like days; empty where the exercises are excluded."""
    second_choice: tuple[bool, ...]
    """For each group of like days whether a better-ranked exercise of the movement is open there."""

    @property
    def exercise(self) -> Exercise:
        """The member that stands for the class in the model."""
        return self.members[0]


@dataclass(frozen=True)
class Assignment:
    """One exercise of a class, done as a prescription says."""

    cls: int
    """The index of the class."""
    prescription: Prescription


@dataclass(frozen=True)
class Instance:
    """A brief as the model sees it: classes of exercises, and groups of days that differ in nothing."""

    resolved: ResolvedBrief
    like_days: tuple[tuple[int, ...], ...]
    """Groups of days that have the same minutes, kit, focus and limits."""
    classes: tuple[ExerciseClass, ...]

    def day(self, like: int) -> ResolvedDay:
        """What the days of a group of like days share."""
        return self.resolved.days[self.like_days[like][0]]

    @cached_property
    def like_of(self) -> dict[int, int]:
        """Day -> the index of its group of like days."""
        return {day: g for g, days in enumerate(self.like_days) for day in days}

    @cached_property
    def class_of(self) -> dict[str, int]:
        """Exercise id -> the index of its class, for every exercise that is open on some day."""
        return {member.id: i for i, cls in enumerate(self.classes) for member in cls.members}

    def fit(self, a: int, b: int) -> bool:
        """Whether exercises of two classes may be a pair."""
        key = (min(a, b), max(a, b))
        if key not in self._fits:
            self._fits[key] = fits(self.resolved, self.classes[a].exercise, self.classes[b].exercise)
        return self._fits[key]

    def beside(self, like: int, half: Assignment, partner: int) -> Assignment:
        """A half of a pair with what an exercise of the partner's class takes from it, on days of one group."""
        effect = self._effect_of(half.cls, partner)
        if effect is None:
            return half
        key = (like, half, partner)
        if key not in self._beside:
            p = half.prescription
            way = (p.sets, p.rest, p.technique, p.drops, p.paired)
            beside = make(self.resolved, self.classes[half.cls].exercise, self.day(like), *way, partner=effect)
            self._beside[key] = Assignment(half.cls, beside)
        return self._beside[key]

    def _effect_of(self, cls: int, partner: int) -> PartnerEffect | None:
        """What an exercise of one class takes from one of another beside it; None where that is nothing."""
        if (cls, partner) not in self._effects:
            effect = effect_of_partner(self.resolved, self.classes[cls].exercise, self.classes[partner].exercise)
            self._effects[cls, partner] = None if effect == NO_EFFECT else effect
        return self._effects[cls, partner]

    @cached_property
    def known_pairs(self) -> dict[int, tuple[tuple[Assignment, ...], ...]]:
        """Group of like days -> its pairs, as far as they were asked for (`columns.pairs_of`)."""
        return {}

    @cached_property
    def _effects(self) -> dict[tuple[int, int], PartnerEffect | None]:
        return {}

    @cached_property
    def _beside(self) -> dict[tuple[int, Assignment, int], Assignment]:
        return {}

    @cached_property
    def _fits(self) -> dict[tuple[int, int], bool]:
        return {}


def instance_of(resolved: ResolvedBrief, apart: frozenset[str] = frozenset()) -> Instance:
    """The instance of a brief: exercises with the same facts are one class, days with the same are one group.

    Each exercise of `apart` (ids) is a class of its own, open or not.
    """
    first = [resolved.days[days[0]] for days in resolved.like_days]
    classes: dict[tuple[object, ...], list[Exercise]] = {}
    facts: dict[str, tuple[tuple[tuple[Prescription, ...], ...], tuple[bool, ...]]] = {}
    for exercise in resolved.catalogue.exercises.values():
        prescriptions = tuple(
            () if resolved.excluded_by(exercise, day) else prescriptions_of(resolved, exercise, day) for day in first
        )
        if not any(prescriptions) and exercise.id not in apart:
            continue
        second = tuple(
            bool(p) and resolved.second_choice(exercise, d) for p, d in zip(prescriptions, first, strict=True)
        )
        facts[exercise.id] = (prescriptions, second)
        own = exercise.id if exercise.id in apart else ""
        signature = (prescriptions, second, own, *class_signature(resolved, exercise, first))
        classes.setdefault(signature, []).append(exercise)
    return Instance(
        resolved, resolved.like_days, tuple(ExerciseClass(tuple(es), *facts[es[0].id]) for es in classes.values())
    )


def class_signature(resolved: ResolvedBrief, exercise: Exercise, days: list[ResolvedDay]) -> tuple[object, ...]:
    """What else two exercises must share to be one class."""
    own = exercise.id if exercise.id in resolved.pinned else ""
    common = (
        exercise.contributions,
        exercise.slot.id,
        exercise.fatigue,
        exercise.axial,
        exercise.once_a_week,
        exercise.barbell,
        own,
        resolved.likes(exercise),
        resolved.dislikes(exercise),
    )
    if not resolved.pairs:
        return common
    stations = tuple(sorted(places(resolved, exercise, "fixed", "place")))
    return (*common, exercise.grip_limited, stations, tuple(i for i in WEIGHTS if i in exercise.needs))
