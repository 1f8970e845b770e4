"""A template's file as strict models: what each of its parts takes, whatever the others say."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Final, Literal

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field

from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.validation_faults import refusal
from setwright.solver.uses.variants.axes import (
    DaysAxis,
    EmphasesAxis,
    ExperienceAxis,
    GoalsAxis,
    KitsAxis,
    MinutesAxis,
)

SHARE: Final = 0.02
"""The share of the week index that extending the shorter variant may cost where the template says none (convention)."""
MOST_SHARE: Final = 0.5


def _printable(value: str) -> str:
    if not value.isprintable():
        raise refusal(f"got {value!r}, expected letters that can be printed")
    return value


def _as_rows(value: object) -> object:
    """A list of tables, also where one stands alone."""
    return value if isinstance(value, list) else [value]


def _selector(value: object) -> object:
    if not isinstance(value, Mapping) or not value:
        raise refusal("is no table of what goes together", "write { days = 2, minutes = 60 }")
    return value


def _labels(value: object) -> tuple[str, ...]:
    """One label or a list of them; numbers stand for their digits."""
    values = value if isinstance(value, list) else [value]
    if not values:
        raise refusal("is an empty list, which matches nothing", "name a value in it")
    return tuple(str(one) for one in values)


def _share(value: object) -> float | None:
    if value == "off":
        return None
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value <= MOST_SHARE:
        said = f"got {shown(value, 'toml')}, expected 0 to {MOST_SHARE:g} or 'off'"
        raise refusal(said, "0.02 is two hundredths of the week index")
    return float(value)


def _given_by_the_name(value: object) -> object:
    raise refusal("is given by the variant's name", "write name = '...' above [vary]")


def _of_one_person(value: object) -> object:
    remedy = "plan this client by a brief of their own; avoid = [...] closes lifts for everyone"
    raise refusal("speaks of one person, a template is for many", remedy)


OfOnePerson = Annotated[Any, BeforeValidator(_of_one_person)]
Printable = Annotated[str, AfterValidator(_printable)]
Word = Literal["days", "kit", "goal", "emphasis", "experience", "minutes"]
Selector = Annotated[
    dict[Word, Annotated[tuple[str, ...], BeforeValidator(_labels)]],
    BeforeValidator(_selector),
]
"""What varies -> labels; a variant matches when it has one of the labels of each that is named."""


class _Part(BaseModel):
    """What every part of a template shares: frozen, strict, and no unknown fields."""

    model_config = ConfigDict(frozen=True, strict=True, extra="forbid", defer_build=True)


class VaryTable(_Part):
    """What varies, in the order of the matrix; None does not vary."""

    days: DaysAxis | None = None
    kits: KitsAxis | None = None
    goals: GoalsAxis | None = None
    emphases: EmphasesAxis | None = None
    experience: ExperienceAxis | None = None
    minutes: MinutesAxis | None = None


class SharedClient(BaseModel):
    """A client's part of the brief in common: nothing that belongs to one person. The brief checks the rest."""

    model_config = ConfigDict(frozen=True, extra="allow", defer_build=True)

    code: OfOnePerson = None
    age: OfOnePerson = None
    cautions: OfOnePerson = None
    clearance: OfOnePerson = None


class SharedBrief(BaseModel):
    """The brief in common, or a part of one. What it says of a week is checked as each variant's brief is."""

    model_config = ConfigDict(frozen=True, extra="allow", defer_build=True)

    title: Annotated[Any, BeforeValidator(_given_by_the_name)] = None
    client: SharedClient = SharedClient()
    lifts: OfOnePerson = None


class AlsoTable(_Part):
    """What is asked besides of the variants that match."""

    when: Selector
    brief: SharedBrief


class ExtendTable(_Part):
    """How far a longer variant keeps the shorter one's lines."""

    share: Annotated[float | None, BeforeValidator(_share)] = SHARE
    """Of the week index; None, `off` in the file: every variant is solved on its own."""


class TemplateFile(_Part):
    """The whole file."""

    title: Printable = ""
    name: Printable | None = None
    """The pattern of the names; None takes the usual one."""
    vary: VaryTable
    exclude: Annotated[tuple[Selector, ...], BeforeValidator(_as_rows), Field(strict=False)] = ()
    also: Annotated[tuple[AlsoTable, ...], BeforeValidator(_as_rows), Field(strict=False)] = ()
    extend: ExtendTable = ExtendTable()
    brief: SharedBrief = SharedBrief()
