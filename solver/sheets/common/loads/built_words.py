"""A load that was built, in words."""

from __future__ import annotations

from setwright.solver.uses.loads.buildable import Built


def load_said(load: float, unit: str) -> str:
    """82.5 kg."""
    return f"{load:g} {unit}"


def plates_said(built: Built) -> str:
    """(20 + 10 + 1.25 a side), led by a blank; without the side where they hang on one end, empty without plates."""
    if not built.plates:
        return ""
    side = " a side" if built.ends == 2 else ""
    return f" ({' + '.join(f'{plate:g}' for plate in built.plates)}{side})"
