"""What a brief gives up so that a week becomes possible, each as a value; the screen puts them in words."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class DropPins:
    """Exercises, by id, that are pinned no longer; `weekday` is that of the one dropped pin, where it names one."""

    exercises: tuple[str, ...]
    weekday: str | None = None


@dataclass(frozen=True)
class DropPartner:
    """A pinned exercise that stays, no longer in a pair with its partner (ids)."""

    exercise: str
    partner: str


@dataclass(frozen=True)
class LeaveSetsOpen:
    """Pinned exercises, by id, whose sets are no longer fixed; `sets` is what was asked of one alone."""

    exercises: tuple[str, ...]
    sets: int | None = None


@dataclass(frozen=True)
class LeaveDayOpen:
    """A pinned exercise, by id, that may stand on any day instead of a weekday."""

    exercise: str
    weekday: str


@dataclass(frozen=True)
class ChangePartner:
    """A pinned exercise in a pair with another one than before (ids)."""

    exercise: str
    partner: str
    before: str


@dataclass(frozen=True)
class AddItems:
    """Pieces of kit, by id, at hand on every day."""

    items: tuple[str, ...]


@dataclass(frozen=True)
class AllowExercise:
    """An exercise, by id, that is avoided no longer."""

    exercise: str


@dataclass(frozen=True)
class DropMovement:
    """A movement, by id, that the week need not have."""

    movement: str


@dataclass(frozen=True)
class DropMuscleDay:
    """A muscle or group, by id, that a day need not have; the weekday is empty where the days have none."""

    muscle: str
    weekday: str


@dataclass(frozen=True)
class PriceRule:
    """A rule that the brief made hard and that costs again instead."""

    rule: str


@dataclass(frozen=True)
class DropRule:
    """A hard rule that is turned off."""

    rule: str


@dataclass(frozen=True)
class AllowShorterRests:
    """Rests that may be shorter than the seconds asked for at least."""

    seconds: int


@dataclass(frozen=True)
class LowerSets:
    """So many weekly sets fewer for each of some muscles (ids); `was` is their lower end, None where these differ."""

    muscles: tuple[str, ...]
    by: float
    was: float | None


@dataclass(frozen=True)
class RaiseSets:
    """A higher upper end of a muscle's weekly sets."""

    muscle: str
    sets: float
    was: float


@dataclass(frozen=True)
class FewerDirectDays:
    """Direct work for some muscles (ids) asked for on `days` days (0: on no number of days) instead of `was`."""

    muscles: tuple[str, ...]
    days: int
    was: int


@dataclass(frozen=True)
class LengthenSessions:
    """So many minutes more for each of the brief's sessions."""

    minutes: int
    sessions: int


@dataclass(frozen=True)
class AllowPairs:
    """Exercises may be done in pairs."""


@dataclass(frozen=True)
class ChangeGoal:
    """A goal with shorter rests."""

    goal: str
    before: str


@dataclass(frozen=True)
class AddDay:
    """One day more, the week's `number`th, of so many minutes; no weekday where the days may come in any order."""

    number: int
    weekday: str | None
    minutes: int


@dataclass(frozen=True)
class MoveDays:
    """Training on other weekdays."""

    weekdays: tuple[str, ...]
    before: tuple[str, ...]


BriefChange = (
    DropPins
    | DropPartner
    | LeaveSetsOpen
    | LeaveDayOpen
    | ChangePartner
    | AddItems
    | AllowExercise
    | DropMovement
    | DropMuscleDay
    | PriceRule
    | DropRule
    | AllowShorterRests
    | LowerSets
    | RaiseSets
    | FewerDirectDays
    | LengthenSessions
    | AllowPairs
    | ChangeGoal
    | AddDay
    | MoveDays
)
