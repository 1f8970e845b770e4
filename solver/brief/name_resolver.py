"""A raw brief's words replaced by the catalogue's ids, with a fault for each word not known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, shown
from setwright.catalogue.near import did_you_mean, suggestion
from setwright.solver.brief.lifts.words import lift_table
from setwright.solver.brief.phrase.lexicon import ALL_KINDS, KIND_NAMES, Kind, Lexicon, key_of

_PLACES: tuple[Kind, ...] = ("kit", "item")
_THINGS: tuple[Kind, ...] = ("item", "kit")
_LISTS: Mapping[str, tuple[Kind, ...]] = {
    "without": ("item",),
    "avoid": ("exercise",),
    "dislike": ("exercise", "item"),
    "like": ("exercise", "item"),
}
_DAY_LISTS: Mapping[str, tuple[Kind, ...]] = {
    "without": ("item",),
    "avoid": ("exercise",),
    "rested": ("muscle", "group"),
    "trained": ("muscle", "group"),
}


class NameResolver:
    """Replaces the names of one raw brief and keeps the faults met; what is malformed is left for the schema."""

    def __init__(self, lexicon: Lexicon, catalogue: Catalogue, rule_ids: Sequence[str] | None) -> None:
        self.lexicon = lexicon
        self.slots = catalogue.slots
        self.rule_ids = rule_ids
        self.faults: list[Fault] = []

    def resolve_brief(self, raw: Mapping[str, Any]) -> dict[str, Any]:
        """The raw brief with every name it holds as an id."""
        brief = dict(raw)
        for field, kinds in _LISTS.items():
            self._each(brief, field, kinds, field)
        self._equipment(brief, "equipment")
        for place, day in enumerate(_rows(brief, "days")):
            self._equipment(day, f"days[{place}].equipment")
            for field, kinds in _DAY_LISTS.items():
                self._each(day, field, kinds, f"days[{place}].{field}")
        for place, pin in enumerate(_rows(brief, "pins")):
            self._one(pin, "exercise", ("exercise",), f"pins[{place}].exercise")
            self._one(pin, "pair_with", ("exercise",), f"pins[{place}].pair_with")
        if isinstance(brief.get("owned"), Mapping):
            brief["owned"] = dict(brief["owned"])
            self._each(brief["owned"], "single", ("item",), "owned.single")
        if isinstance(brief.get("client"), Mapping):
            brief["client"] = dict(brief["client"])
            for place, caution in enumerate(_rows(brief["client"], "cautions")):
                self._one(caution, "tag", ("caution",), f"client.cautions[{place}].tag")
        self._movements(brief)
        self._muscles(brief)
        self._lifts(brief)
        self._rules(brief)
        return brief

    def _id(self, value: Any, kinds: Sequence[Kind], where: str) -> Any:
        """The id of one word, or the word itself with a fault kept."""
        if not isinstance(value, str):
            return value
        found = self.lexicon.resolve(value, kinds)
        if found:
            return found[1]
        wanted = " or ".join(KIND_NAMES[kind] for kind in kinds)
        other = self.lexicon.resolve(value, ALL_KINDS)
        if other:
            self.faults.append(Fault(where, f"{shown(value)} is {KIND_NAMES[other[0]]}, expected {wanted}"))
            return value
        remedy = suggestion(self.lexicon.nearest(value, kinds)) or self.lexicon.otherwise(kinds)
        self.faults.append(Fault(where, f"{shown(value)} is not in the catalogue, expected {wanted}", remedy))
        return value

    def _one(self, table: dict[str, Any], field: str, kinds: Sequence[Kind], where: str) -> None:
        if field in table:
            table[field] = self._id(table[field], kinds, where)

    def _each(self, table: dict[str, Any], field: str, kinds: Sequence[Kind], where: str) -> None:
        """Every word of a list as an id, each once."""
        if isinstance(table.get(field), list | tuple):
            ids = [self._id(word, kinds, f"{where}[{place}]") for place, word in enumerate(table[field])]
            table[field] = _once(ids)

    def _equipment(self, table: dict[str, Any], where: str) -> None:
        """A word alone is a kit before it is an item; in a list it is an item first."""
        if isinstance(table.get("equipment"), str):
            self._one(table, "equipment", _PLACES, where)
        else:
            self._each(table, "equipment", _THINGS, where)

    def _movements(self, brief: dict[str, Any]) -> None:
        if not isinstance(brief.get("must"), list | tuple):
            return
        found: list[Any] = []
        for place, word in enumerate(brief["must"]):
            slot = self._slot(word)
            if slot is not None and not self.lexicon.resolve(word, ("movement",)):
                remedy = f"write {slot!r}, or pin an exercise"
                self.faults.append(Fault(f"must[{place}]", f"{word!r} is not a movement, only one form of one", remedy))
                found.append(word)
            else:
                found.append(self._id(word, ("movement",), f"must[{place}]"))
        brief["must"] = _once(found)

    def _slot(self, word: Any) -> str | None:
        """The movement of the slot a word names, if it names one."""
        if not isinstance(word, str):
            return None
        for slot in self.slots.values():
            if key_of(word) in (key_of(slot.id), key_of(slot.name)):
                return slot.movement
        return None

    def _muscles(self, brief: dict[str, Any]) -> None:
        if not isinstance(brief.get("muscles"), Mapping):
            return
        named: dict[str, Any] = {}
        for word, ask in brief["muscles"].items():
            name = self._id(word, ("muscle", "group"), f"muscles.{word}")
            if name in named:
                self.faults.append(Fault(f"muscles.{word}", f"is {name!r} a second time", "keep one of the two"))
            named[name] = ask
        brief["muscles"] = named

    def _lifts(self, brief: dict[str, Any]) -> None:
        """Lifts by their ids, each with a table; what is neither a set nor a maximum is left out with a fault."""
        if not isinstance(brief.get("lifts"), Mapping):
            return
        client = brief.get("client")
        unit = client.get("unit", "kg") if isinstance(client, Mapping) else "kg"
        named: dict[str, Any] = {}
        for word, said in brief["lifts"].items():
            name, where = self._id(word, ("exercise",), f"lifts.{word}"), f"lifts.{word}"
            if name in named:
                self.faults.append(Fault(where, f"is {name!r} a second time", "keep one of the two"))
            found = lift_table(said, where, unit, self.faults)
            if found is not None:
                named[name] = found
        brief["lifts"] = named

    def _rules(self, brief: dict[str, Any]) -> None:
        if self.rule_ids is None or not isinstance(brief.get("rules"), Mapping):
            return
        for rule in brief["rules"]:
            if rule not in self.rule_ids:
                remedy = did_you_mean(rule, self.rule_ids)
                self.faults.append(Fault(f"rules.{rule}", f"{rule!r} is not a rule", remedy))


def _rows(table: dict[str, Any], field: str) -> list[dict[str, Any]]:
    """The tables of a list, copied so that they may be changed; anything else is left alone."""
    if not isinstance(table.get(field), list | tuple):
        return []
    rows = [dict(row) if isinstance(row, Mapping) else row for row in table[field]]
    table[field] = rows
    return [row if isinstance(row, dict) else {} for row in rows]


def _once(values: list[Any]) -> list[Any]:
    """The values in order, each once."""
    kept: list[Any] = []
    for value in values:
        if value not in kept:
            kept.append(value)
    return kept
