"""What a rule is: its words, and what it does to a choice, to an evaluated week and to the linear model."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Literal

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Kind
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import LinearModel

Check = Callable[[EvaluatedWeek], Iterator[Finding]]
Excludes = Callable[[ResolvedBrief, Exercise, ResolvedDay], bool]
Missing = Callable[[ResolvedBrief, Exercise, ResolvedDay], tuple[str, ...]]
Post = Callable[[LinearModel], None]
Figures = Callable[[ResolvedBrief], Mapping[str, object]]
Negligible = Callable[[EvaluatedWeek, Finding], bool]
Scope = Literal["any week", "planned weeks"]
"""any week: a breach is wrong whoever made the week; planned weeks: setwright plans so, others may do otherwise."""


def held_by_columns(model: LinearModel) -> None:
    """Post nothing: every column of the model keeps the rule, since none is made that breaks it."""


def held_by_decoding(model: LinearModel) -> None:
    """Post nothing: the rule is kept when chosen columns are turned into a printed week."""


@dataclass(frozen=True)
class Rule:
    """One rule. `check` yields the breaches of a week, or `excludes` says that an exercise may not stand on a day."""

    id: str
    kind: Kind
    sentence: str
    """With the rule's numbers in braces, filled in from what is in force: {limit}, or a key of `more` in rules.toml
    with _ for -, or one of `figures`."""
    remedy: str
    post: Post
    """Puts the rule on a linear model, which may cost a week less than `check` does, never more."""
    check: Check | None = None
    excludes: Excludes | None = None
    says: str | Mapping[str, str] = "{day}: {exercise}: {sentence}"
    """What a finding says, one text for each of its cases; the braces are the finding's fields."""
    figures: Figures | None = None
    """Numbers of the sentence that do not stand in rules.toml."""
    scope: Scope = "any week"
    negligible: Negligible | None = None
    """Whether a breach by a week made elsewhere is not worth a word."""
    missing: Missing | None = None
    """The ids of the items for want of which `excludes` says no; a finding names them."""
    always: bool = field(default=False)
    """Whether the rule is posted even where the brief turns it off, because its variables serve other rules; its own
    constraints and costs then ask whether they are off."""

    def text_of(self, case: str) -> str:
        """The text of one case of a breach, its braces not yet filled in."""
        return self.says if isinstance(self.says, str) else self.says[case]

    def sentence_for(self, resolved: ResolvedBrief) -> str:
        """The rule's sentence with the numbers that are in force under a brief."""
        numbers = resolved.catalogue.rules[self.id]
        figures: dict[str, object] = {key.replace("-", "_"): resolved.limit(self.id, key) for key in numbers.more}
        if numbers.limit is not None:
            figures["limit"] = resolved.limit(self.id)
        return self.sentence.format(**figures, **(self.figures(resolved) if self.figures else {}))
