"""Groups of muscles taken apart: what is asked of each muscle."""

from __future__ import annotations

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


def nothing_to_train(asked: dict[str, MuscleAsk], catalogue: Catalogue) -> bool:
    """Whether no muscle is sought at all: every one at none, minor ones unless named otherwise."""
    return all(
        asked[muscle.id].emphasis == "none" if muscle.id in asked else muscle.size == "minor"
        for muscle in catalogue.muscles.values()
    )
