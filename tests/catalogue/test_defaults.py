"""The defaults of the catalogue are read whole, and everything wrong with them is said at once."""

from __future__ import annotations

import copy
from dataclasses import FrozenInstanceError, replace
from typing import Any

import pytest

from setwright.catalogue.check import check_catalogue
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import CatalogueFault
from setwright.catalogue.load import DATA, merge, read_toml
from setwright.catalogue.parse import parse_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.rulebook import resolve


@pytest.fixture(scope="module")
def shipped() -> dict[str, Any]:
    tables: dict[str, Any] = {}
    for path in sorted(DATA.rglob("*.toml")):
        merge(tables, read_toml(path), path.name)
    return tables


def faults_of(tables: dict[str, Any]) -> list[str]:
    with pytest.raises(CatalogueFault) as caught:
        parse_catalogue(tables, "", ())
    return [str(fault) for fault in caught.value.faults]


def test_defaults_cannot_be_changed_by_a_reader(catalogue: Catalogue) -> None:
    with pytest.raises(FrozenInstanceError):
        catalogue.defaults.keep_share = 0.5  # type: ignore[misc]
    with pytest.raises(TypeError):
        catalogue.defaults.weights["priority"] = 1.0  # type: ignore[index]


def test_the_share_that_is_kept_comes_from_the_catalogue(catalogue: Catalogue) -> None:
    """Changed there, it changes in a brief that does not say it."""
    assert catalogue.defaults.keep_share == 0.9
    own = replace(catalogue, defaults=replace(catalogue.defaults, keep_share=0.8))
    brief = parse_brief({"days": [{"minutes": 40}]}, own).brief
    assert resolve(brief, own).keep_share == 0.8
    assert resolve(brief.model_copy(update={"keep_share": 0.95}), own).keep_share == 0.95


def test_every_fault_of_the_defaults_comes_at_once(shipped: dict[str, Any]) -> None:
    tables = copy.deepcopy(shipped)
    tables["weights"]["priority"] = "three"
    tables["bands"]["growth"]["hold"] = [8, 4]
    tables["rests"]["growth"]["main"] = [150, 185]
    tables["rests"]["growth"]["heavy"] = [150]
    tables["sets"]["sinlge"] = tables["sets"].pop("single")
    tables["ramp"]["steps"] = [[50, 8], [70]]
    del tables["fewest-minutes"]
    tables["weigths"] = {}
    assert faults_of(tables) == [
        "weigths: is no part of a catalogue; did you mean 'weights'?",
        "defaults: weights: priority is 'three'; expected a number",
        "defaults: bands: growth: hold is [8, 4]: upside down; write [4, 8]",
        "defaults: sets: single is missing; give [least, most]",
        "defaults: ramp: steps is a list; expected a list of pairs of whole numbers",
        "defaults: fewest-minutes: keep-share is missing; give a number",
        "defaults: rests: growth.main holds 185; take a rest of the list `round`",
        "defaults: sets: 'sinlge' is no field here; did you mean 'single'?",
        "defaults: rests: growth: 'heavy' is no field here",
    ]


def test_defaults_that_would_be_divided_by_are_above_zero(catalogue: Catalogue) -> None:
    defaults = catalogue.defaults
    own = replace(
        defaults,
        weights={**defaults.weights, "hold": 0.0},
        cost_scale=replace(defaults.cost_scale, reference=0.0, least=5.0),
        keep_share=1.5,
        minor_growth=replace(defaults.minor_growth, muscles=("calfs",)),
    )
    assert [str(fault) for fault in check_catalogue(replace(catalogue, defaults=own))] == [
        "defaults: bands-growth-minor: muscle 'calfs' is not known; did you mean 'calves'?",
        "defaults: weights: hold 0 is divided by; give a number above 0",
        "defaults: cost-scale: reference 0; give a number above 0",
        "defaults: cost-scale: least 5 and most 4; give least above 0 and most not below it",
        "defaults: fewest-minutes: keep-share 1.5; give a share above 0, at most 1",
    ]
