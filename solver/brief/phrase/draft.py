"""What a phrase has said so far, as the raw table of a brief file."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.phrase.token_reader import TokenReader

_LABELS = {
    "goal": "the goal",
    "pairs": "whether sets are paired",
    "techniques": "whether techniques are used",
    "client.age": "the age",
    "client.experience": "the experience",
    "client.unit": "the unit",
    "reps": "the reps",
    "dose": "the dose",
    "equipment": "the place",
}


@dataclass(frozen=True)
class MuscleDays:
    """Muscles and groups that are trained, rested, or trained `only` on some weekdays."""

    kind: str
    names: tuple[str, ...]
    days: tuple[str, ...]
    said: str

    def field_of(self, day: str) -> str | None:
        """The field of a training day that holds the names, if any does."""
        if self.kind == "only":
            return "trained" if day in self.days else "rested"
        return self.kind if day in self.days else None


class BriefDraft:
    """The raw table of one phrase as it is read; two different things said of one field are a fault."""

    def __init__(self, reader: TokenReader, rests: tuple[int, int]) -> None:
        """`rests` are the seconds that short rests are at most, and long ones at least."""
        self.reader, self.rests = reader, rests
        self.raw: dict[str, Any] = {}
        self.home = False
        """Whether `at home` was said, which names no equipment yet."""
        self.muscle_days: list[MuscleDays] = []
        """What is said of the muscles of weekdays, until the days are known."""
        self.rest: str | None = None
        """The emphasis of all muscles that the phrase does not name, where it says one."""

    def set(self, path: str, value: Any) -> None:
        """Set the field at a path of dots; the same value again changes nothing."""
        *parents, field = path.split(".")
        table = self.raw
        for parent in parents:
            table = table.setdefault(parent, {})
        if field in table and table[field] != value:
            label = _LABELS.get(path, field.replace("_", " "))
            said = f"{label} is said twice: {_plain(table[field])} and {_plain(value)}"
            self.reader.fault(said, "keep one of the two")
            return
        table[field] = value

    def add(self, path: str, value: Any) -> None:
        """Add to the list at a path of dots, each value once."""
        *parents, field = path.split(".")
        table = self.raw
        for parent in parents:
            table = table.setdefault(parent, {})
        row = table.setdefault(field, [])
        if value not in row:
            row.append(value)

    def remove(self, field: str, value: Any) -> None:
        """Take a value out of a list again; the list goes with its last one."""
        row = self.raw.get(field, [])
        if value in row:
            row.remove(value)
        if not row:
            self.raw.pop(field, None)

    def caution(self, tag: str) -> None:
        """Add a caution; one that is said twice stands twice, so that the brief can say it was taken once."""
        self.raw.setdefault("client", {}).setdefault("cautions", []).append({"tag": tag})

    def put_rest(self, catalogue: Catalogue) -> None:
        """Give the muscles that are sought and not named the emphasis that was said of the rest."""
        if self.rest is None:
            return
        named: set[str] = set()
        for name, ask in self.raw.get("muscles", {}).items():
            group = catalogue.groups.get(name)
            own = (name,) if group is None else group.priority if ask.get("emphasis") == "priority" else group.otherwise
            named.update((*own, *(group.normal_when_priority if group else ())))
        for muscle in catalogue.muscles.values():
            if (muscle.size != "minor" or self.rest == "none") and muscle.id not in named:
                self.muscle(muscle.id, emphasis=self.rest)

    def muscle(self, name: str, **ask: Any) -> None:
        """Ask something of a muscle or group, together with what was asked of it before."""
        table = self.raw.setdefault("muscles", {}).setdefault(name, {})
        for field, value in ask.items():
            if value is None:
                continue
            if field in table and table[field] != value:
                what = "" if field == "emphasis" else f"{field.replace('_', ' ')} "
                said = f"'{name}' is both {what}{_plain(table[field])} and {_plain(value)}"
                self.reader.fault(said, "keep one of the two")
            table.setdefault(field, value)


def _plain(value: Any) -> str:
    """A value in words."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, list | tuple):
        return " and ".join(str(part) for part in value)
    return str(value)
