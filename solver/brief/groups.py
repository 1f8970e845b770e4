"""Groups of muscles taken apart: what is asked of each muscle."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.schema import Brief, MuscleAsk


def expand_muscles(brief: Brief, catalogue: Catalogue) -> dict[str, MuscleAsk]:
    """What is asked of each muscle the brief names, in the catalogue's order; unsaid muscles are absent.

    A muscle named itself wins over its group; raises UsageFault where two groups disagree about a muscle.
    A group's band holds for each of its muscles.
    """
    asked, faults = expand_groups(brief, catalogue)
    if faults:
        raise UsageFault(faults)
    return asked


def expand_groups(brief: Brief, catalogue: Catalogue) -> tuple[dict[str, MuscleAsk], tuple[Fault, ...]]:
    """What is asked of each muscle as in `expand_muscles`, with a fault for each disagreement of two groups."""
    faults: list[Fault] = []
    found: dict[str, tuple[str, MuscleAsk]] = {
        name: (name, ask) for name, ask in brief.muscles.items() if name in catalogue.muscles
    }
    for name, ask in brief.muscles.items():
        if name not in catalogue.groups or name in catalogue.muscles:
            continue
        for muscle, part in _parts(name, ask, catalogue):
            by, earlier = found.get(muscle, (name, part))
            if by in catalogue.groups and by not in catalogue.muscles and earlier != part:
                said = f"asks {_said(part)} of {muscle}, but {by} asks {_said(earlier)}"
                faults.append(Fault(f"muscles.{name}", said, f"say what {muscle} gets by its own name"))
            found.setdefault(muscle, (name, part))
    return {muscle: found[muscle][1] for muscle in catalogue.muscles if muscle in found}, tuple(faults)


def _parts(name: str, ask: MuscleAsk, catalogue: Catalogue) -> list[tuple[str, MuscleAsk]]:
    """What a group's ask means for each of its muscles."""
    group = catalogue.groups[name]
    if ask.emphasis != "priority":
        return [(muscle, ask) for muscle in group.otherwise]
    return [
        *((muscle, ask) for muscle in group.priority),
        *((muscle, MuscleAsk()) for muscle in group.normal_when_priority),
    ]


def _said(ask: MuscleAsk) -> str:
    """An ask in a few words."""
    parts: list[str] = [ask.emphasis]
    if ask.at_least is not None:
        parts.append(f"at least {ask.at_least:g} sets")
    if ask.at_most is not None:
        parts.append(f"at most {ask.at_most:g} sets")
    if ask.days_at_least is not None:
        parts.append(f"on {ask.days_at_least} days")
    return ", ".join(parts)


def untrainable_on_days(brief: Brief, asked: dict[str, MuscleAsk], catalogue: Catalogue) -> Iterator[Fault]:
    """A fault for each name that a day is to train though each of its muscles is rested there, or at none."""
    for place, day in enumerate(brief.days):
        rested = frozenset[str]().union(*map(catalogue.muscles_of, day.rested or ()))
        for name in day.trained or ():
            muscles = catalogue.muscles_of(name)
            closed = {m for m in muscles if m in asked and asked[m].emphasis == "none"}
            for why, gone in (("rested there", rested), ("at none", closed)):
                if muscles <= gone:
                    said = f"'{name}' is to be trained, but each muscle of it is {why}"
                    yield Fault(f"days[{place}].trained", said, "drop one of the two")


def nothing_to_train(asked: dict[str, MuscleAsk], catalogue: Catalogue) -> bool:
    """Whether no muscle is sought at all: every one at none, minor ones unless named otherwise."""
    return all(
        asked[muscle.id].emphasis == "none" if muscle.id in asked else muscle.size == "minor"
        for muscle in catalogue.muscles.values()
    )
