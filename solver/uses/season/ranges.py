"""How long a season and its blocks may be, in weeks."""

from __future__ import annotations

from typing import Final

SEASON_WEEKS: Final = (8, 60)
BLOCK_WEEKS: Final = (2, 12)
