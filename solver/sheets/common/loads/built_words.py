"""A load that was built, in words."""

from __future__ import annotations

from setwright.solver.uses.loads.buildable import Built


def load_said(load: float, unit: str) -> str:
    """82.5 kg."""
    return f"{load:g} {unit}"


def plates_said(built: Built) -> str:
    """(20 + 10 + 1.25 a side), led by a blank; empty without plates."""
    return f" ({plates_words(built)})" if built.plates else ""


def plates_words(built: Built) -> str:
    """20 + 10 + 1.25 a side; without the side where they hang on one end, empty without plates."""
    side = " a side" if built.plates and built.ends == 2 else ""
    return f"{' + '.join(f'{plate:g}' for plate in built.plates)}{side}"
