"""Concessions of sets and days: bands widened and days of direct work given up, by as little as frees the brief."""

from __future__ import annotations

import math
from collections.abc import Iterator

from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.schema import Brief, MuscleAsk
from setwright.solver.uses.relax.relaxation import Case, Mend, least

GRAIN = 0.5
"""A band gives way by half sets."""
MANY_GRAIN = 1.0
"""Many bands give way by whole sets together."""


def set_mends(case: Case) -> Iterator[Mend]:
    """Every concession of weekly sets or of days of direct work that frees the brief."""
    if case.about("exact-band"):
        yield from lower_ends(case)
        yield from upper_ends(case)
    yield from fewer_days(case)


def lower_ends(case: Case) -> Iterator[Mend]:
    """One lower end reduced; where no one alone is enough, all of them by the same amount."""
    clashing = [wish.subject for wish in case.wishes("exact-band")]
    alone = [mend for muscle in clashing for mend in lowered(case, (muscle,))]
    yield from alone
    everyone = tuple(asked(case, "at_least"))
    if not alone and len(everyone) > 1:
        yield from lowered(case, everyone)


def lowered(case: Case, muscles: tuple[str, ...]) -> Iterator[Mend]:
    """The smallest equal reduction of some lower ends."""
    asks = expand_muscles(case.brief, case.catalogue)
    ends = {m: asks[m].at_least or 0.0 for m in muscles}
    grain = GRAIN if len(muscles) == 1 else MANY_GRAIN

    def made(steps: int) -> Brief | None:
        changes = {m: {"at_least": max(0.0, end - grain * steps) or None} for m, end in ends.items()}
        return with_asks(case, changes)

    found = least(made, math.ceil(max(ends.values()) / grain), case.possible)
    brief = made(found) if found else None
    if not found or brief is None:
        return
    by = min(grain * found, max(ends.values()))
    given = sum(min(by, end) for end in ends.values())
    if len(muscles) == 1:
        yield Mend("sets", one_lowered(case, muscles[0], ends[muscles[0]], by), brief, sets=given)
    else:
        least_end, most_end = min(ends.values()), max(ends.values())
        left = f", at least {most_end - by:g} instead of {most_end:g}" if least_end == most_end else ""
        words = f"ask {by:g} sets less of each of the {len(muscles)} muscles with a lower end{left}"
        yield Mend("sets", words, brief, sets=given)


def one_lowered(case: Case, muscle: str, end: float, by: float) -> str:
    name = case.catalogue.muscles[muscle].name.lower()
    if end - by <= 0:
        return f"ask no number of sets of {name} instead of at least {end:g}"
    return f"at least {end - by:g} sets of {name} instead of {end:g}"


def upper_ends(case: Case) -> Iterator[Mend]:
    """One upper end raised."""
    asks = expand_muscles(case.brief, case.catalogue)
    for muscle in asked(case, "at_most"):
        end = asks[muscle].at_most or 0.0

        def made(steps: int, muscle: str = muscle, end: float = end) -> Brief | None:
            return with_asks(case, {muscle: {"at_most": end + GRAIN * steps}})

        room = round((LIMITS["at_most"][1] - end) / GRAIN)
        found = least(made, min(room, 40), case.possible)
        brief = made(found) if found else None
        if found and brief is not None:
            name = case.catalogue.muscles[muscle].name.lower()
            words = f"at most {end + GRAIN * found:g} sets of {name} instead of {end:g}"
            yield Mend("sets", words, brief, sets=GRAIN * found)


def fewer_days(case: Case) -> Iterator[Mend]:
    """One muscle's days of direct work reduced; where no one alone is enough, all of them."""
    asks = expand_muscles(case.brief, case.catalogue)
    everyone = tuple(m for m, ask in asks.items() if ask.days_at_least)
    clashing = [wish.subject for wish in case.wishes("days-at-least")]
    alone = [mend for muscle in clashing for mend in days_lowered(case, asks, (muscle,))]
    yield from alone
    if clashing and not alone and len(everyone) > 1:
        yield from days_lowered(case, asks, everyone)


def days_lowered(case: Case, asks: dict[str, MuscleAsk], muscles: tuple[str, ...]) -> Iterator[Mend]:
    """Some muscles' days of direct work reduced by as few as possible."""
    ends = {m: asks[m].days_at_least or 0 for m in muscles}

    def made(steps: int) -> Brief | None:
        return with_asks(case, {m: {"days_at_least": max(0, end - steps) or None} for m, end in ends.items()})

    found = least(made, max(ends.values()), case.possible)
    brief = made(found) if found else None
    if not found or brief is None:
        return
    names = [case.catalogue.muscles[m].name.lower() for m in muscles]
    who = names[0] if len(names) == 1 else f"each of {len(names)} muscles"
    left = max(ends.values()) - found
    now = f"on {left} day{'s' if left != 1 else ''}" if left > 0 else "on no number of days"
    yield Mend("days", f"direct work for {who} {now} instead of {max(ends.values())}", brief)


def asked(case: Case, end: str) -> list[str]:
    """The muscles with such an end of their own."""
    asks = expand_muscles(case.brief, case.catalogue)
    return [muscle for muscle, ask in asks.items() if getattr(ask, end) is not None]


def with_asks(case: Case, changes: dict[str, dict[str, float | int | None]]) -> Brief | None:
    """The brief with some muscles' asks changed, each under its own name."""
    asks = expand_muscles(case.brief, case.catalogue)
    own = {muscle: asks[muscle].model_copy(update=change) for muscle, change in changes.items()}
    return case.changed(muscles={**case.brief.muscles, **own})
