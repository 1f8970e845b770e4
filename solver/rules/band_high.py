"""Weekly sets above the band, from shared lifts."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import WHOLE, View


def check(view: View) -> Iterator[Finding]:
    for muscle in view.terms.muscles.values():
        over = view.weekly_sets(muscle.id) / WHOLE - muscle.high
        if over > 0 and not muscle.exact_high:
            text = f"{muscle.id} has {over + muscle.high:g} sets, band up to {muscle.high:g}"
            yield Finding("band-high", text, view.terms.charge("band-high", over))


RULE = Rule(
    id="band-high",
    kind="scored",
    sentence="Each weekly set of a muscle above its band costs.",
    remedy="swap a shared lift for one that spares it",
    check=check,
)
