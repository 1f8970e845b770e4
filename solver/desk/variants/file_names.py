"""How the files of templates and of their runs are called."""

from __future__ import annotations

from typing import Final

ENDING: Final = ".toml"
RUN_OF: Final = "template.toml"
"""The file in the folder of a run with the text that was run."""
