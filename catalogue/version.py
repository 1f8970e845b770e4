"""Which setwright this is."""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, version


def own_version() -> str:
    """The installed version, or 0+source where the package runs from its folder."""
    try:
        return version("setwright")
    except PackageNotFoundError:
        return "0+source"
