"""`setwright variants`: every sensible variant of a template, planned, run, looked at and printed."""

from __future__ import annotations

from types import MappingProxyType

import click

from setwright.solver.cli.group import Named

PARTS = {
    "plan": "Show what a template makes: the variants, their number and the time they take.",
    "run": "Solve what a folder does not hold yet, on this machine's cores or a cluster.",
    "status": "Show how a folder stands.",
    "sheets": "Print every week of a folder.",
}


class Parts(Named):
    """The group's commands, each loaded when it is called."""

    helps = MappingProxyType(PARTS)
    prefix = "variants_"


@click.group("variants", cls=Parts)
def command() -> None:
    """Every sensible variant of a template: days x minutes x kit x emphasis x goal x experience.

    \b
    setwright variants plan template.toml
    setwright variants run template.toml -o folder
    """
