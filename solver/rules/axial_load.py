"""Load on the spine in a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    most = view.terms.limit("axial-load")
    for day, lines in zip(view.terms.days, view.on, strict=True):
        total = sum(x.sets * x.exercise.axial for x in lines)
        if total > most:
            yield Finding("axial-load", f"{day.name} has {total} sets x axial load, at most {most:g}")


RULE = Rule(
    id="axial-load",
    kind="hard",
    sentence="The day's sets times axial load stay within 14.",
    remedy="swap a lift for one that spares the spine",
    check=check,
)
