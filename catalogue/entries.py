"""The catalogue's entries as frozen values: what one exercise, muscle, slot, kit or number is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

from setwright.catalogue.cautions import AgeGroup, Caution, Position
from setwright.catalogue.defaults import Defaults

Region = Literal["push", "pull", "lower", "arms", "other"]
Fatigue = Literal["high", "low"]
Limb = Literal["both", "each, then rest", "each, rest after each"]
Technique = Literal["drop", "rest-pause"]
Size = Literal["large", "small", "minor"]
Place = Literal["portable", "place", "fixed"]
BodyWeight = Literal["added", "helped"]


@dataclass(frozen=True)
class Muscle:
    """One muscle: `minor` muscles are counted, not sought; `isolate` ones need their own single-joint work."""

    id: str
    name: str
    size: Size
    isolate: bool
    default_weight: float
    aliases: tuple[str, ...] = ()


@dataclass(frozen=True)
class Group:
    """A word for several muscles, with the muscles it names when made a priority and otherwise."""

    id: str
    name: str
    priority: tuple[str, ...]
    otherwise: tuple[str, ...]
    normal_when_priority: tuple[str, ...] = ()
    aliases: tuple[str, ...] = ()


@dataclass(frozen=True)
class Slot:
    """A movement at an angle; two exercises of one slot do the same job."""

    id: str
    name: str
    movement: str
    region: Region
    multi_joint: bool
    focus: tuple[str, ...]


@dataclass(frozen=True)
class Item:
    """A piece of equipment: carried about (`portable`), a place to lift at, or a fixed station."""

    id: str
    name: str
    place: Place
    aliases: tuple[str, ...] = ()
    machine: bool = False
    """Whether it guides the load along a path of its own: what `no machines` leaves out."""


@dataclass(frozen=True)
class Kit:
    """A named set of equipment, with the heaviest dumbbell it holds in kg (None: as heavy as wanted)."""

    id: str
    name: str
    items: frozenset[str]
    dumbbell_max: float | None = None
    cannot: tuple[str, ...] = ()
    """Muscles that nothing in this kit trains directly."""
    cannot_fill: Mapping[str, str] = field(default_factory=dict)
    """Movement -> why this kit has no lift for it."""
    aliases: tuple[str, ...] = ()


@dataclass(frozen=True)
class Exercise:
    """One exercise with every attribute that evaluation and rules ask of it."""

    id: str
    name: str
    slot: Slot
    rank: int
    needs: tuple[str, ...]
    contributions: tuple[tuple[str, int], ...]
    """(muscle, hundredths of a set) sorted by muscle; 100 is direct, 50 indirect."""
    fatigue: Fatigue
    limb: Limb
    reps: tuple[int, int]
    alternating: bool
    change_over: int
    axial: int
    grip_limited: bool
    can_pin: bool
    safe_to_fail: bool
    ability: bool
    once_a_week: bool
    techniques: tuple[Technique, ...]
    joints: tuple[str, ...]
    load: str
    load_step: float
    light_below: float | None
    setting: str
    cue: str
    link: str | None = None
    aliases: tuple[str, ...] = ()
    timed: bool = False
    """Whether a set is a hold or a carry: its repetitions are slow breaths, and sheets print seconds."""
    body_weight: BodyWeight | None = None
    """Where the body is lifted too: the load is `added` to it, or the load helped it up, so that less is harder."""
    notes: tuple[str, ...] = ()
    """Why a contribution other than 100 or 50 stands: a source or the word convention."""

    @property
    def has_load(self) -> bool:
        """Whether there is a load to choose: for all but body weight and bands."""
        return self.load not in ("bodyweight", "band")

    @property
    def movement(self) -> str:
        """The movement of its slot, such as hinge or row."""
        return self.slot.movement

    @property
    def region(self) -> Region:
        """The region of its slot: push, pull, lower, arms or other."""
        return self.slot.region

    @property
    def multi_joint(self) -> bool:
        """Whether more than one joint moves the load."""
        return self.slot.multi_joint

    @property
    def main_lift(self) -> bool:
        """Whether it is a high-fatigue multi-joint lift, the kind a session is built around."""
        return self.fatigue == "high" and self.slot.multi_joint

    @property
    def rest_after_each_side(self) -> bool:
        """Whether a one-limb lift rests after each side, and not only after both."""
        return self.limb == "each, rest after each"

    @cached_property
    def direct(self) -> frozenset[str]:
        """The muscles of which a set counts in full."""
        return frozenset(m for m, part in self.contributions if part == 100)

    @cached_property
    def muscles(self) -> frozenset[str]:
        """Every muscle of which a set counts at all."""
        return frozenset(m for m, _ in self.contributions)

    @property
    def barbell(self) -> bool:
        """Whether it needs a straight barbell or a trap bar."""
        return "barbell" in self.needs or "trap-bar" in self.needs


@dataclass(frozen=True)
class Number:
    """One number with where it comes from; `low` and `high` bound it, `mark` is A, B, C, D or M."""

    id: str
    value: float
    low: float | None
    high: float | None
    unit: str
    mark: str
    source: str
    reading: str


@dataclass(frozen=True)
class RuleNumbers:
    """What a rule costs and where it begins: cost in index points, limits in the units its rule states."""

    id: str
    cost: float | None
    limit: float | None
    more: Mapping[str, float]
    unit: str
    origin: str
    hard_for: tuple[str, ...] = ()
    """Clients for whom a scored rule is hard unless the brief says otherwise: novice, older, under-age."""


@dataclass(frozen=True, eq=False)
class Catalogue:
    """Everything known, each part by id in a fixed order.

    A catalogue is equal to itself alone, so that what is made from it can be kept in a cache.
    """

    muscles: Mapping[str, Muscle]
    groups: Mapping[str, Group]
    slots: Mapping[str, Slot]
    items: Mapping[str, Item]
    kits: Mapping[str, Kit]
    cautions: Mapping[str, Caution]
    ages: Mapping[str, AgeGroup]
    positions: Mapping[str, Position]
    exercises: Mapping[str, Exercise]
    evidence: Mapping[str, Number]
    rules: Mapping[str, RuleNumbers]
    defaults: Defaults
    digest: str
    changed: tuple[str, ...] = field(default=())
    """What an overlay added or changed, in sentences."""

    def number(self, name: str) -> float:
        """The value of one evidence number, in the unit that its entry states."""
        return self.evidence[name].value

    def muscle_or_group(self, name: str) -> Muscle | Group:
        """What a brief calls by an id: a group of muscles, or a muscle."""
        return self.groups.get(name) or self.muscles[name]

    def muscles_of(self, name: str) -> frozenset[str]:
        """The ids of the muscles that a brief means by an id: the muscle itself, or all of a group."""
        return frozenset((name,) if name in self.muscles else self.groups[name].otherwise)
