"""What a template can vary: each axis a few labelled values, each value a change to the brief."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, Final

from pydantic import AfterValidator, BeforeValidator

from setwright.solver.brief.defaults import SPREAD, WEEKDAYS
from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.schema import Experience, Goal
from setwright.solver.brief.validation_faults import refusal

AXES: Final = ("days", "kits", "goals", "emphases", "experience", "minutes")
"""Minutes come last: along them variants extend each other, so a chain stands together."""
WORDS: Final[Mapping[str, str]] = {"kits": "kit", "goals": "goal", "emphases": "emphasis"}
MOST_VALUES: Final = 1000
MOST_LETTERS: Final = 100


@dataclass(frozen=True)
class AxisValue:
    """One value of an axis: its label in names, and what it means to the brief."""

    label: str
    means: Any


@dataclass(frozen=True)
class Axis:
    """One thing that varies, its values in order."""

    name: str
    values: tuple[AxisValue, ...]

    @property
    def labels(self) -> tuple[str, ...]:
        """The values' labels, in order."""
        return tuple(value.label for value in self.values)

    @property
    def word(self) -> str:
        """What one value is called: kits -> kit."""
        return word_of(self.name)


def word_of(axis: str) -> str:
    """What one value of an axis is called: kits -> kit."""
    return WORDS.get(axis, axis)


# ---- how an axis stands in a file: a list, one value alone or a table, read as label -> value


def _by_label(value: object) -> object:
    """A list or one value alone as a table, its values their own labels."""
    if isinstance(value, Mapping):
        return value
    values = value if isinstance(value, list) else [value]
    if not 1 <= len(values) <= MOST_VALUES:
        raise refusal(f"has {len(values)} values, expected 1 to {MOST_VALUES}")
    labels = [one if isinstance(one, str) else shown(one, "toml") for one in values]
    again = sorted({label for label in labels if labels.count(label) > 1})
    if again:
        raise refusal(f"{', '.join(map(repr, again))} stands there twice", "say it once")
    return dict(zip(labels, values, strict=True))


def _by_label_alone(value: object) -> object:
    """The same where no table is taken."""
    if isinstance(value, Mapping):
        raise refusal("got a table, expected a list", "write for example days = [2, 3], minutes = [30, 45]")
    return _by_label(value)


def _fit_for_a_name(label: str) -> str:
    if not label.strip() or not label.isprintable() or len(label) > MOST_LETTERS:
        said = f"{label[:MOST_LETTERS]!r} cannot stand in a name"
        raise refusal(said, f"name it with 1 to {MOST_LETTERS} letters that can be printed")
    return label


def _each_once(values: dict[str, Any]) -> dict[str, Any]:
    """Values of which no two mean the same: those would be solved twice."""
    first: dict[str, str] = {}
    same = []
    for label, means in values.items():
        other = first.setdefault(_meaning(means), label)
        if other != label:
            same.append(f"{label!r} means the same as {other!r}")
    if same:
        raise refusal(", ".join(same), "say it once")
    return values


def _meaning(means: Any) -> str:
    """One text for all values that ask for the same, in whatever order they list it."""
    listed = sorted(map(str, means)) if isinstance(means, list | tuple) else means
    return json.dumps(listed, sort_keys=True, default=str)


def _shortest_first(values: dict[str, int]) -> dict[str, int]:
    return dict(sorted(values.items(), key=lambda pair: pair[1]))


def _weekdays(value: object) -> tuple[str, ...]:
    """A count of days, spread over the week, or weekdays in one text."""
    if isinstance(value, str) and value.split() and all(word in WEEKDAYS for word in value.split()):
        return tuple(value.split())
    if isinstance(value, int) and not isinstance(value, bool) and value in SPREAD:
        return SPREAD[value]
    said = f"got {shown(value, 'toml')}, expected 1 to 7 or weekdays"
    raise refusal(said, "write days = [2, 3] or ['mon thu']")


def _kit(value: object) -> str | list[str]:
    """A kit, or the items of one."""
    if isinstance(value, str) and value.strip() and value.isprintable():
        return value
    if isinstance(value, list) and all(isinstance(item, str) for item in value):
        return value
    said = f"got {shown(value, 'toml')}, expected a kit in quotes, or a list of items"
    raise refusal(said, "give each list a name in a table, [vary.kits]")


def _emphasis(value: object) -> dict[str, Any]:
    """Muscles with what is asked of them: a word is a muscle or group at priority, `even` asks for nothing."""
    if isinstance(value, str):
        return {} if value == "even" else {value: "priority"}
    if isinstance(value, Mapping):
        return dict(value)
    said = f"got {shown(value, 'toml')}, expected 'even', a muscle in quotes or a table of muscles"
    raise refusal(said, "write emphases = ['even', 'delts']")


def _lists_have_names(value: object) -> object:
    """Kits by label; a list of items needs the name that only a table gives it."""
    if isinstance(value, list) and any(not isinstance(one, str) for one in value):
        said = "holds a value that is no kit in quotes"
        raise refusal(said, "give each list of items a name in a table, [vary.kits]")
    return _by_label(value)


Label = Annotated[str, AfterValidator(_fit_for_a_name)]
DaysAxis = Annotated[
    dict[Label, Annotated[tuple[str, ...], BeforeValidator(_weekdays)]],
    BeforeValidator(_by_label_alone),
    AfterValidator(_each_once),
]
MinutesAxis = Annotated[
    dict[Label, int], BeforeValidator(_by_label_alone), AfterValidator(_each_once), AfterValidator(_shortest_first)
]
KitsAxis = Annotated[
    dict[Label, Annotated[str | list[str], BeforeValidator(_kit)]],
    BeforeValidator(_lists_have_names),
    AfterValidator(_each_once),
]
GoalsAxis = Annotated[dict[Label, Goal], BeforeValidator(_by_label_alone), AfterValidator(_each_once)]
ExperienceAxis = Annotated[dict[Label, Experience], BeforeValidator(_by_label_alone), AfterValidator(_each_once)]
EmphasesAxis = Annotated[
    dict[Label, Annotated[dict[str, Any], BeforeValidator(_emphasis)]],
    BeforeValidator(_by_label),
    AfterValidator(_each_once),
]
