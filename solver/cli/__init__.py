"""The command line: one thin module per command, loaded when it is asked for."""

from __future__ import annotations


def main() -> None:
    """Run the command line; the console entry point."""
    from setwright.solver.cli.group import setwright

    setwright(prog_name="setwright")
