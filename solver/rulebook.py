"""Every rule there is, found by listing the folder of rules, and what they do together."""

from __future__ import annotations

import pkgutil
from importlib import import_module
from types import MappingProxyType

from setwright.catalogue.entries import Catalogue
from setwright.solver import rules
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.resolved_brief import Excluder, ResolvedBrief
from setwright.solver.evaluation.resolving import resolve_with
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def rules_of(module: str) -> tuple[Rule, ...]:
    """The rules of one file of the folder: its RULE, or the RULES of a table; raises AttributeError for neither."""
    # By name, since the folder is the list: a rule is added by adding its file.
    file = import_module(f"{rules.__name__}.{module}")
    found: tuple[Rule, ...] = file.RULES if hasattr(file, "RULES") else (file.RULE,)
    return found


FILES: MappingProxyType[str, tuple[Rule, ...]] = MappingProxyType(
    {module.name: rules_of(module.name) for module in pkgutil.iter_modules(rules.__path__)}
)
"""File of the folder, without its ending -> its rules."""
RULES: MappingProxyType[str, Rule] = MappingProxyType({rule.id: rule for file in FILES.values() for rule in file})
"""Rule id -> rule. Their order is the catalogue's: see `in_order`."""


def in_order(catalogue: Catalogue) -> tuple[Rule, ...]:
    """The rules in the order of the catalogue's numbers, in which they are posted, asked and printed."""
    return tuple(RULES[rule] for rule in catalogue.rules)


def resolve(brief: Brief, catalogue: Catalogue) -> ResolvedBrief:
    """A brief whose words are already the catalogue's, with every default settled and every exclusion known."""
    excluders: tuple[tuple[str, Excluder], ...] = tuple(
        (rule.id, rule.excludes) for rule in in_order(catalogue) if rule.excludes is not None
    )
    return resolve_with(brief, catalogue, excluders)


def post_all(model: LinearModel) -> None:
    """Put every rule that the brief leaves on, and those whose variables others need, on a linear model."""
    for rule in in_order(model.resolved.catalogue):
        if rule.always or not model.resolved.off(rule.id):
            rule.post(model)


def sentence_of(rule: str, resolved: ResolvedBrief) -> str:
    """A rule's sentence with the numbers in force under a brief."""
    return RULES[rule].sentence_for(resolved)
