"""A raw brief understood: names as ids, days on weekdays, every assumption said."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief import defaults
from setwright.solver.brief.assumed import Assumption, assumptions
from setwright.solver.brief.contradictions import contradictions
from setwright.solver.brief.groups import expand_groups, nothing_to_train, untrainable_on_days
from setwright.solver.brief.lifts.faults import lift_faults
from setwright.solver.brief.name_resolver import NameResolver
from setwright.solver.brief.phrase.lexicon import lexicon_of
from setwright.solver.brief.schema import Brief, CautionAsk, weekdays_of
from setwright.solver.brief.schema_errors import validation_faults


@dataclass(frozen=True)
class ParsedBrief:
    """A brief as understood, with what was assumed where nothing was said."""

    brief: Brief
    assumed: tuple[Assumption, ...]


def parse_brief(
    raw: Mapping[str, Any], catalogue: Catalogue, where: str = "", rule_ids: Sequence[str] | None = None
) -> ParsedBrief:
    """The brief a raw table stands for; raises UsageFault with every fault found, each led by `where`."""
    resolver = NameResolver(lexicon_of(catalogue), catalogue, rule_ids)
    table = resolver.resolve_brief(raw)
    try:
        said = Brief.model_validate(table)
    except ValidationError as error:
        raise UsageFault(_placed(where, [*resolver.faults, *validation_faults(error)])) from None
    asked, disagreements = expand_groups(said, catalogue)
    faults = [*resolver.faults, *contradictions(said), *lift_faults(said, catalogue), *disagreements]
    faults += untrainable_on_days(said, asked, catalogue)
    if nothing_to_train(asked, catalogue):
        faults.append(Fault("muscles", "every muscle is at none: nothing is left to train", "train one at least"))
    if faults:
        raise UsageFault(_placed(where, faults))
    brief = with_defaults(said)
    return ParsedBrief(brief, assumptions(said, brief, table, catalogue))


def with_defaults(brief: Brief) -> Brief:
    """The brief with goal, kit and weekdays filled in, its days in the order of the week and each caution once."""
    changes: dict[str, Any] = {"goal": brief.goal or defaults.GOAL}
    cautions = _each_once(brief.client.cautions)
    if cautions != brief.client.cautions:
        changes["client"] = brief.client.model_copy(update={"cautions": cautions})
    if brief.equipment is None and any(day.equipment is None for day in brief.days):
        changes["equipment"] = defaults.KIT
    if not brief.any_order:
        weekdays = weekdays_of(brief)
        days = [day.model_copy(update={"weekday": on}) for day, on in zip(brief.days, weekdays, strict=True)]
        changes["days"] = tuple(sorted(days, key=lambda day: defaults.WEEKDAYS.index(day.weekday or "mon")))
    return brief.model_copy(update=changes)


def _each_once(cautions: tuple[CautionAsk, ...]) -> tuple[CautionAsk, ...]:
    """Each caution once: as somebody named said it, else as it was said first."""
    found: dict[str, CautionAsk] = {}
    for caution in cautions:
        known = found.setdefault(caution.tag, caution)
        if caution.said_by and not known.said_by:
            found[caution.tag] = caution
    return tuple(found.values())


def raw_of(brief: Brief) -> dict[str, Any]:
    """The brief as the raw table that is understood as the same brief; unsaid fields are left out."""
    return brief.model_dump(mode="json", exclude_none=True)


def _placed(where: str, faults: Iterable[Fault]) -> tuple[Fault, ...]:
    """The faults with the source they stand in, each once."""
    placed = (fault.at(f"{where}: {fault.where}" if where else fault.where) for fault in faults)
    return tuple(dict.fromkeys(placed))
