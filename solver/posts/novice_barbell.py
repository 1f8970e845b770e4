"""Barbell lifts of a region in a novice's day."""

from __future__ import annotations

from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import LinearModel


def post(model: LinearModel) -> None:
    if model.resolved.experience != "novice":
        return
    most = round(model.resolved.limit("novice-barbell"))
    for group in model.groups:
        for region in REGIONS:
            found = model.count(lambda e, r=region: e.barbell and e.region == r, group.index)
            model.at_most_a_day("novice-barbell", found, most, group.index)
