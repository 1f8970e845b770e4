"""The brief as one strict, frozen model: what a coach or client asks of a week."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Discriminator, Field, Tag, model_validator

from setwright.solver.brief import defaults

Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
Focus = Literal["full-body", "upper", "lower", "push", "pull", "arms"]
Emphasis = Literal["priority", "normal", "hold", "none"]
Goal = Literal["growth", "efficiency", "balanced"]
Experience = Literal["novice", "intermediate", "advanced"]
HardRegion = Literal["lower", "push", "pull"]
Unit = Literal["kg", "lb"]

Words = Annotated[tuple[str, ...], Field(strict=False)]
"""A TOML array of words: the array may be a list, its words must be strings."""


def _limits(field: str, **more: Any) -> Any:
    """The field bounded by its row of the limits table."""
    low, high = defaults.LIMITS[field]
    return Field(ge=low, le=high, **more)


def _words_or_number(value: object) -> str:
    return "word" if isinstance(value, str) else "number"


def _word_or_words(value: object) -> str:
    return "words" if isinstance(value, list | tuple) else "word"


def _as_iso(value: object) -> object:
    """A TOML date as its ISO words; anything else untouched."""
    return value.isoformat() if isinstance(value, date) else value


IsoDate = Annotated[str, BeforeValidator(_as_iso), Field(pattern=r"^\d{4}-\d{2}-\d{2}$")]
Equipment = Annotated[
    Annotated[str, Tag("word")] | Annotated[Words, Tag("words")],
    Discriminator(_word_or_words),
]
RuleAsk = Annotated[
    Annotated[Literal["off", "hard"], Tag("word")] | Annotated[float, Field(ge=0), Tag("number")],
    Discriminator(_words_or_number),
]
UNION_TAGS = frozenset({"word", "words", "number"})
"""The tags above, which are no part of a fault's path."""


class Asked(BaseModel):
    """What every part of a brief shares: frozen, strict, and no unknown fields."""

    model_config = ConfigDict(frozen=True, strict=True, extra="forbid", defer_build=True, allow_inf_nan=False)


class DayAsk(Asked):
    """One training day: its weekday (None: to be filled in), minutes, its own place or theme, and what closes on it."""

    weekday: Weekday | None = None
    minutes: int = _limits("minutes")
    equipment: Equipment | None = None
    focus: Focus | None = None
    without: Words | None = None
    avoid: Words | None = None
    rested: Words | None = None
    trained: Words | None = None
    missed: bool | None = None


class OtherActivity(Asked):
    """Sport or hard labour on a weekday, with the regions it tires."""

    weekday: Weekday
    regions: Annotated[tuple[HardRegion, ...], Field(strict=False, min_length=1, max_length=3)] = ("lower",)
    name: str = ""


class Owned(Asked):
    """What is owned in detail; weights are in the client's unit."""

    dumbbell_max: float | None = _limits("dumbbell_max", default=None)
    dumbbell_step: float | None = _limits("dumbbell_step", default=None)
    bar: float | None = _limits("bar", default=None)
    plates: Annotated[tuple[Annotated[float, _limits("plates")], ...], Field(strict=False)] = ()
    safeties: bool = False
    single: Words = ()
    busy: bool = False


class MuscleAsk(Asked):
    """What is asked of one muscle or group: an emphasis, an exact band of weekly sets, or both."""

    emphasis: Emphasis = "normal"
    at_least: float | None = _limits("at_least", default=None)
    at_most: float | None = _limits("at_most", default=None)
    days_at_least: int | None = _limits("days_at_least", default=None)

    @model_validator(mode="before")
    @classmethod
    def _emphasis_alone(cls, value: object) -> object:
        """A word alone is the emphasis."""
        return {"emphasis": value} if isinstance(value, str) else value

    @property
    def exact(self) -> bool:
        """Whether it carries a band of its own, hard at each end it names."""
        return self.at_least is not None or self.at_most is not None


class LiftAsk(Asked):
    """What is known of a lift: a recent set, or the most that was lifted once; weights in the client's unit."""

    load: float | None = _limits("load", default=None)
    reps: int | None = _limits("reps", default=None)
    rir: int | None = _limits("rir", default=None)
    """Repetitions that were left in that set; None: none were."""
    maximum: float | None = _limits("maximum", default=None)
    on: IsoDate | None = None


class Pin(Asked):
    """An exercise that must be in the week, on a day, with so many sets or beside another if said."""

    exercise: str
    day: Weekday | None = None
    sets: int | None = _limits("sets", default=None)
    pair_with: str | None = None


class CautionAsk(Asked):
    """A joint or condition to be careful of, with who said so and when."""

    tag: str
    said_by: str = ""
    on: IsoDate | None = None


class Clearance(Asked):
    """A professional's clearance: by whom, when, and within which limits."""

    by: str = Field(min_length=1)
    on: IsoDate
    limits: str = ""


class Client(Asked):
    """Who trains, by a code and never by name."""

    code: str = ""
    age: int | None = _limits("age", default=None)
    experience: Experience = "intermediate"
    trains_alone: bool = False
    cautions: Annotated[tuple[CautionAsk, ...], Field(strict=False)] = ()
    clearance: Clearance | None = None
    unit: Unit = "kg"


PRIVATE = ("age", "cautions", "clearance")
"""The client's fields that are health notes or as personal as these."""


class Clock(Asked):
    """The session clock's own numbers where they differ from the defaults, all in seconds."""

    warm_up: int | None = _limits("warm_up", default=None)
    spare: int | None = _limits("spare", default=None)
    seconds_per_rep: float | None = _limits("seconds_per_rep", default=None)
    ramp_lower: int | None = _limits("ramp_lower", default=None)
    ramp_push: int | None = _limits("ramp_push", default=None)
    ramp_pull: int | None = _limits("ramp_pull", default=None)
    ramp_light: int | None = _limits("ramp_light", default=None)
    pair_change: int | None = _limits("pair_change", default=None)


class Brief(Asked):
    """One week's brief; a field at None is unsaid and takes the default of its goal or kit.

    Whether its fields agree with each other is not checked here (see `contradictions`).
    """

    title: str = ""
    days: Annotated[tuple[DayAsk, ...], Field(strict=False, min_length=1, max_length=7)]
    any_order: bool = False
    rest_days_between: int = _limits("rest_days_between", default=defaults.REST_DAYS_BETWEEN)
    other: Annotated[tuple[OtherActivity, ...], Field(strict=False)] = ()
    equipment: Equipment | None = None
    without: Words = ()
    owned: Owned = Owned()
    muscles: dict[str, MuscleAsk] = Field(default_factory=dict)
    lifts: dict[str, LiftAsk] | None = None
    """None: the week names no loads."""
    goal: Goal | None = None
    pairs: bool | None = None
    techniques: bool | None = None
    keep_share: float | None = _limits("keep_share", default=None)
    reps: Literal["lower", "usual", "higher"] = "usual"
    dose: Literal["usual", "lighter", "minimum"] = "usual"
    rir_more: int | None = _limits("rir_more", default=None)
    rir_at_least: int | None = _limits("rir_at_least", default=None)
    """Repetitions in reserve that every set keeps; None: those of its kind of lift."""
    rest_at_least: int | None = _limits("rest_at_least", default=None)
    rest_at_most: int | None = _limits("rest_at_most", default=None)
    """Seconds of rest after every set, and after each round of a pair; None: those of the goal."""
    rules: dict[str, RuleAsk] = Field(default_factory=dict)
    must: Words = ()
    pins: Annotated[tuple[Pin, ...], Field(strict=False)] = ()
    avoid: Words = ()
    dislike: Words = ()
    like: Words = ()
    client: Client = Client()
    clock: Clock = Clock()


def weekdays_of(brief: Brief) -> tuple[str, ...]:
    """The weekday of each day in the brief's order: its own, or that of the usual spread of so many days."""
    usual = defaults.SPREAD[len(brief.days)]
    return tuple(day.weekday or spread for day, spread in zip(brief.days, usual, strict=True))
