"""Where results stand: one file for each key, whole on the disk or not there."""

from __future__ import annotations

import os
import socket
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.atomic import flush_folder, write_file

RESULTS: Final = "results"
HALF_WRITTEN: Final = ".unfinished"
MANIFEST: Final = "variants.json"


class ResultStore:
    """A folder of results by key; what is in it was written whole."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._made: set[Path] = set()

    def open(self) -> None:
        """Make the folder if it is missing, clear what a dead writer of this machine left, and try a write.

        Raises UsageFault for a folder of other files, SetwrightError where nothing can be written.
        """
        if self.folder.exists() and not self.folder.is_dir():
            raise UsageFault(Fault(str(self.folder), "is a file, expected a folder", "name a folder"))
        strange = self.folder.is_dir() and not (self.folder / MANIFEST).exists() and any(self.folder.iterdir())
        if strange and not (self.folder / HALF_WRITTEN).exists():
            remedy = "name a new folder, or one of an earlier run"
            raise UsageFault(Fault(str(self.folder), "holds other files, expected a folder of variants", remedy))
        try:
            (self.folder / HALF_WRITTEN).mkdir(parents=True, exist_ok=True)
            self._clear_unfinished()
            probe = self._unfinished("probe")
            probe.write_bytes(b"")
            probe.unlink()
        except OSError as error:
            raise self._cannot_write(error) from None

    def _clear_unfinished(self) -> None:
        """Remove unfinished files whose writer, a process of this machine, is no more."""
        for path in sorted((self.folder / HALF_WRITTEN).iterdir()):
            host, _, rest = path.name.partition("~")
            pid = rest.partition("~")[0]
            if host == machine_name() and pid.isdigit() and int(pid) != os.getpid() and not _alive(int(pid)):
                path.unlink(missing_ok=True)

    def _unfinished(self, name: str) -> Path:
        return self.folder / HALF_WRITTEN / f"{machine_name()}~{os.getpid()}~{name}"

    def path(self, key: str) -> Path:
        """A result's file; two letters of the key make the folder, so that no folder holds too many."""
        return self.folder / RESULTS / key[:2] / f"{key}.json"

    def read(self, key: str) -> bytes | None:
        """A result's bytes, or None where there is none; raises SetwrightError where it cannot be read."""
        try:
            return self.path(key).read_bytes()
        except FileNotFoundError:
            return None
        except OSError as error:
            said = f"cannot be read: {error.strerror or error}"
            raise SetwrightError(Fault(str(self.path(key)), said, "check its permissions")) from None

    def write(self, key: str, data: bytes) -> None:
        """Keep a result: on the disk whole when this returns, or not at all when this raises SetwrightError."""
        self.put(self.path(key), data)

    def put(self, path: Path, data: bytes) -> None:
        """Write any file of the folder, whole or not at all; raises SetwrightError."""
        try:
            self._make(path.parent)
            write_file(path, data, replace=True, unfinished=self._unfinished(path.name), durable=True)
        except OSError as error:
            raise self._cannot_write(error) from None

    def keep(self, path: Path, data: bytes) -> None:
        """Write any file of the folder, unless just these bytes stand there; raises SetwrightError."""
        try:
            stands = path.read_bytes() == data
        except OSError:
            stands = False
        if not stands:
            self.put(path, data)

    def drop(self, path: Path) -> None:
        """Remove any file of the folder that is there; raises SetwrightError."""
        try:
            path.unlink(missing_ok=True)
        except OSError as error:
            raise self._cannot_write(error) from None

    def _make(self, folder: Path) -> None:
        """The folder a file goes into, its name on the disk before the file's."""
        if folder not in self._made:
            folder.mkdir(parents=True, exist_ok=True)
            flush_folder(folder.parent)
            self._made.add(folder)

    def stored(self) -> Iterator[str]:
        """Every key that has a result, in order."""
        for path in sorted((self.folder / RESULTS).glob("??/*.json")):
            yield path.stem

    def remove(self, key: str) -> None:
        """Remove a result; raises SetwrightError."""
        self.drop(self.path(key))

    def _cannot_write(self, error: OSError) -> SetwrightError:
        said = f"cannot be written: {error.strerror or error}"
        remedy = "make room or mend the permissions, then run it again: what is done is kept"
        return SetwrightError(Fault(str(self.folder), said, remedy))


def machine_name() -> str:
    """This machine's name, fit for a file's name."""
    return "".join(c if c.isalnum() or c in ".-" else "-" for c in socket.gethostname()) or "machine"


def _alive(pid: int) -> bool:
    """Whether a process of this machine still runs."""
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True
