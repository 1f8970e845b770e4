"""What a session's sheet in the workbook looks like to a program: keys, limits and where they stand."""

from __future__ import annotations

from typing import Final

ID: Final = "exercise-id"
"""The key of the column that names each row; the hidden first row of a sheet holds the keys of its columns."""
NOTES: Final = "notes"
SESSION: Final = "@session"
"""Leads the name of the row that says which session it is: @session 1 mon."""
DATE, MINUTES, HARD, REMARKS = "@date", "@minutes", "@how-hard", "@notes"
"""The rows under the lines; their value stands in the column of the first set's load."""
MOST_LOAD: Final = 1000
MOST_REPS: Final = 100
MOST_MINUTES: Final = 600
HARDEST: Final = 10
"""Above these an input is a slip of the pen (convention); how hard goes from 0 to 10."""


def load_key(number: int) -> str:
    """The key of a set's load, sets counted from 1."""
    return f"load-{number}"


def reps_key(number: int) -> str:
    """The key of a set\'s repetitions, sets counted from 1."""
    return f"reps-{number}"
