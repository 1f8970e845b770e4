"""The matrix of a template as this machine would run it."""

from __future__ import annotations

from pathlib import Path

from setwright.catalogue.entries import Catalogue
from setwright.solver.batch.stamp import stamp_of
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import SEARCHES
from setwright.solver.uses.variants.matrix import VariantMatrix, matrix_of
from setwright.solver.uses.variants.template import Template, read_template, template_in


def matrix_in(template: Path, catalogue: Catalogue, search: str) -> VariantMatrix:
    """The matrix of a template's file; raises UsageFault with every fault of the template."""
    return planned_matrix(read_template(template), catalogue, search)


def matrix_of_text(text: str, catalogue: Catalogue, search: str, where: str = "template") -> VariantMatrix:
    """The matrix of a template's text; raises UsageFault with every fault of the template."""
    return planned_matrix(template_in(text, where), catalogue, search)


def planned_matrix(template: Template, catalogue: Catalogue, search: str) -> VariantMatrix:
    """The matrix of a template; raises UsageFault with every fault of its briefs."""
    return matrix_of(template, catalogue, stamp_of(catalogue, SEARCHES[search]), tuple(RULES))
