"""Workers on a cluster: a Dask scheduler at an address, spoken to through the standard interface of executors."""

from __future__ import annotations

import logging
import time
from collections.abc import Mapping
from concurrent.futures import CancelledError, Future
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.catalogue.version import own_version
from setwright.solver.uses.variants.task import VariantTask, Work

MOST_WAIT: Final = 15.0
"""Seconds in which the scheduler must answer."""
RECOUNT: Final = 1.0
"""Seconds after which the workers are counted again."""
VERSION_QUESTION: Final = "__import__('setwright.catalogue.version', fromlist=['own_version']).own_version()"
"""What a new worker is asked, as text for `eval`: one without setwright cannot read a task, and never answers."""


@dataclass(frozen=True)
class TlsFiles:
    """The files of a mutual TLS connection: who signs, this side's certificate and its key."""

    authority: Path
    certificate: Path
    key: Path


class DaskWorkers:
    """A client of one scheduler; its tasks go to whichever of its workers is free."""

    def __init__(self, address: str, tls: TlsFiles | None = None) -> None:
        """Connect; raises UsageFault for a wrong address, SetwrightError where no scheduler or worker answers."""
        self.address = address
        check_address(address, tls)
        self.client = _connected(address, tls)
        self.executor = self.client.get_executor(pure=False)
        self._count, self._counted_at = 0, 0.0
        self._known: set[str] = set()
        try:
            if not self.count:
                raise SetwrightError(Fault(address, "has no workers", "start `dask worker ADDRESS --nthreads 1` first"))
        except SetwrightError:
            self.close(True)
            raise

    @property
    def count(self) -> int:
        """Threads of all workers, counted once a second; what was last known while there are none."""
        if not self._count or time.monotonic() - self._counted_at >= RECOUNT:
            self._recount()
        return self._count

    def _recount(self) -> None:
        """Count the workers, and ask those that are new for their version."""
        self._counted_at = time.monotonic()
        threads = self.client.scheduler_info(n_workers=-1).get("workers", {}) if self._reached() else {}
        self._count = sum(int(worker["nthreads"]) for worker in threads.values()) or self._count
        new = sorted(set(threads) - self._known)
        if new:
            answers = self.client.run(eval, VERSION_QUESTION, workers=new, on_error="return")
            _refuse_other_versions(answers)
            # One that could not be reached yet is asked again at the next count.
            self._known.update(worker for worker, answer in answers.items() if isinstance(answer, str))

    def _reached(self) -> bool:
        return self.client.status == "running" and self.client.scheduler_comm is not None

    def submit(self, work: Work, task: VariantTask) -> Future[bytes]:
        """Hand out one task; raises SetwrightError where the scheduler is gone."""
        self.check()
        future: Future[bytes] = self.executor.submit(work, task)
        return future

    def died(self, error: BaseException) -> bool:
        """Dask gives a task up after several workers died under it."""
        return isinstance(error, CancelledError) or type(error).__name__ == "KilledWorker"

    def renew(self) -> None:
        """Do nothing: Dask hands a dead worker's tasks to the others."""

    def check(self) -> None:
        """Raise SetwrightError where the scheduler is gone or a new worker has another version."""
        if not self._reached():
            remedy = "what is done is stored: start the scheduler and its workers, then run the same command"
            raise SetwrightError(Fault(self.address, "the cluster's scheduler is gone", remedy))
        if time.monotonic() - self._counted_at >= RECOUNT:
            self._recount()

    def close(self, at_once: bool) -> None:
        """Leave the scheduler; its workers go on for others."""
        with suppress(Exception):
            self.executor.shutdown(wait=False)
        with suppress(Exception):
            self.client.close(timeout=2)


def _refuse_other_versions(answers: Mapping[str, Any]) -> None:
    """Raise SetwrightError where workers have another version than this one, or none; one not reached is left out."""
    here, remedy = own_version(), "give every worker the same setwright, solvers and catalogue"
    faults = [
        Fault(worker, f"this worker has setwright {found}, expected {here}", remedy)
        for worker, found in sorted(answers.items())
        if isinstance(found, str) and found != here
    ]
    faults += [
        Fault(worker, f"this worker cannot load setwright: {found}", remedy)
        for worker, found in sorted(answers.items())
        if isinstance(found, ImportError | AttributeError)
    ]
    if faults:
        raise SetwrightError(faults)


def check_address(address: str, tls: TlsFiles | None) -> None:
    """Raise UsageFault for an address that is none, and for TLS files that do not go with it or are not there."""
    kind = address.partition("://")[0]
    if kind not in ("tcp", "tls") or not address.rpartition(":")[2].isdigit():
        raise UsageFault(Fault("--cluster", f"{address!r} is no address", "write tcp://HOST:PORT or tls://HOST:PORT"))
    if (kind == "tls") != (tls is not None):
        remedy = "a tls:// address takes --tls-ca, --tls-cert and --tls-key; a tcp:// address takes none of them"
        raise UsageFault(Fault("--cluster", f"{address!r} and the TLS files do not go together", remedy))
    for path in () if tls is None else (tls.authority, tls.certificate, tls.key):
        if not path.is_file():
            raise UsageFault(Fault(str(path), "is not there", "name a PEM file"))


def _connected(address: str, tls: TlsFiles | None) -> Any:
    """The connected client; raises SetwrightError where the library or the scheduler is missing."""
    try:
        import dask
        import distributed
    except ModuleNotFoundError:
        remedy = "pip install 'setwright[cluster]'"
        raise SetwrightError(Fault("--cluster", "needs dask.distributed, which is not installed", remedy)) from None
    logging.getLogger("distributed").setLevel(logging.CRITICAL)
    # A lost scheduler ends the run at once: the store knows what is done, so nothing is gained by waiting.
    dask.config.set({"distributed.comm.retry.count": 0, "distributed.comm.timeouts.connect": MOST_WAIT})
    classes: Any = distributed  # untyped
    security = None
    if tls is not None:
        files = {"tls_ca_file": tls.authority, "tls_client_cert": tls.certificate, "tls_client_key": tls.key}
        security = classes.Security(require_encryption=True, **{name: str(path) for name, path in files.items()})
    try:
        return classes.Client(
            address, security=security, timeout=MOST_WAIT, set_as_default=False, direct_to_workers=False
        )
    except (OSError, TimeoutError) as error:
        said = f"no scheduler answers: {error or type(error).__name__}"
        remedy = "start `dask scheduler` and check the address and the certificates"
        raise SetwrightError(Fault(address, said, remedy)) from None
