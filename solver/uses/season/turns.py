"""Which muscles a season is to specialise, and in what order they are wanted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import suggestion
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.phrase.lexicon import Kind, lexicon_of
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.resolved_brief import SOUGHT, ResolvedBrief
from setwright.solver.rulebook import resolve

NAMES: tuple[Kind, ...] = ("muscle", "group")


def turns_of(brief: Brief, words: Sequence[str], catalogue: Catalogue) -> Mapping[str, int]:
    """Muscle -> its place among those wanted, equal for the muscles of one word, in the catalogue's order.

    Without words the brief's priorities, without these every trained muscle, all at place 0. Raises UsageFault with a
    fault for each word that is no muscle, or one that the brief holds, leaves out or cannot train.
    """
    if brief.dose == "minimum":
        raise UsageFault(
            Fault(
                "dose",
                "asks for the minimum dose, which holds every muscle",
                "leave it out: a season specialises muscles in turn",
            )
        )
    places = places_of(words, catalogue)
    resolved = resolve(brief, catalogue)
    sought = [m.id for m in resolved.muscles.values() if m.emphasis in SOUGHT and m.weight]
    if not words:
        wanted = [m for m in sought if resolved.muscles[m].emphasis == "priority"] or sought
        return {m: 0 for m in wanted if _trained(resolved, m)}
    faults = []
    asked = expand_muscles(brief, catalogue)
    for muscle in places:
        emphasis = asked[muscle].emphasis if muscle in asked else "normal"
        if emphasis in ("hold", "none"):
            faults.append(
                Fault(
                    "emphasis",
                    f"{muscle} is at {emphasis} in the brief, and is to be specialised",
                    "leave it out of one of the two",
                )
            )
        elif not _trained(resolved, muscle):
            faults.append(Fault("emphasis", f"the kit trains {muscle} with nothing of its own", "leave it out"))
    if faults:
        raise UsageFault(faults)
    return {m: places[m] for m in catalogue.muscles if m in places}


def places_of(words: Sequence[str], catalogue: Catalogue) -> dict[str, int]:
    """Muscle -> the place of the first word that names it, groups taken apart; raises UsageFault."""
    lexicon, faults = lexicon_of(catalogue), []
    found: dict[str, int] = {}
    for place, word in enumerate(words):
        known = lexicon.resolve(word, NAMES)
        if known is None:
            near, known_names = lexicon.nearest(word, NAMES), ", ".join(catalogue.muscles)
            faults.append(
                Fault(
                    "emphasis",
                    f"{word!r} is no muscle or group of muscles",
                    suggestion(near) or f"the muscles are {known_names}",
                )
            )
            continue
        for muscle in (known[1],) if known[0] == "muscle" else catalogue.groups[known[1]].priority:
            found.setdefault(muscle, place)
    if faults:
        raise UsageFault(faults)
    return found


def _trained(resolved: ResolvedBrief, muscle: str) -> bool:
    """Whether some exercise open to the brief trains the muscle directly."""
    return resolved.can_somewhere(lambda e: muscle in e.direct)
