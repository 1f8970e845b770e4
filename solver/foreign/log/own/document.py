"""The sessions of a log's own document, `setwright.log/1`, every fault at once."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.validation_faults import model_faults
from setwright.solver.foreign.log.draft import ReadSession
from setwright.solver.foreign.log.lift_names import LiftNames
from setwright.solver.foreign.log.row_faults import RowFaults, capped
from setwright.solver.foreign.log.tables.sessions import check_numbers
from setwright.solver.log.unread import UnreadRow
from setwright.solver.sheets.common.json_values import refuse_unwritable
from setwright.solver.sheets.document.progress.log_model import SCHEMA, LogDocument

WRITE_ONE = "name a log that setwright wrote as JSON"


def read_document(
    data: bytes, where: str, names: LiftNames, faults: RowFaults
) -> tuple[list[ReadSession], tuple[UnreadRow, ...]]:
    """The sessions of a document and what of their file was not read; raises UsageFault with all its faults."""
    document = _parsed(data, where)
    if not isinstance(document, Mapping):
        said = f"is {shown(document)}, expected a log as an object"
        raise UsageFault(Fault(where, said, WRITE_ONE))
    if document.get("schema") != SCHEMA:
        said = f"got {shown(document.get('schema'))}, expected {SCHEMA!r}"
        raise UsageFault(Fault(f"{where}: schema", said, WRITE_ONE))
    refuse_unwritable(document, where)
    try:
        found = LogDocument.model_validate(document, context=names)
    except ValidationError as error:
        raise UsageFault(capped(model_faults(error, LogDocument, document, where), where)) from None
    sessions = []
    for place, session in enumerate(found.sessions):
        read = _read(session.as_session(), f"sessions[{place}]")
        check_numbers(read.session.sets, read.set_place, faults, names.catalogue)
        sessions.append(read)
    return sessions, tuple(UnreadRow(row.place, row.text, row.why) for row in found.unread)


def _read(session: Any, place: str) -> ReadSession:
    return ReadSession(session, place, lambda at: f"{place}.sets[{at}]")


def _parsed(data: bytes, where: str) -> Any:
    """The JSON of a file; raises UsageFault where it is none."""
    try:
        return json.loads(data.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", WRITE_ONE)) from None
    except (ValueError, RecursionError) as error:
        raise UsageFault(Fault(where, f"is not JSON: {error}", WRITE_ONE)) from None
