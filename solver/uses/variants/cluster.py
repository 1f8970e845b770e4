"""Workers on a cluster: a Dask scheduler at an address, spoken to through the standard interface of executors."""

from __future__ import annotations

import logging
import time
from collections.abc import Mapping
from concurrent.futures import CancelledError, Future
from contextlib import suppress
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from typing import Any

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.catalogue.version import own_version
from setwright.solver.uses.variants.task import Task, Work

CONNECT = 15.0
"""Seconds in which the scheduler must answer."""
LOOK = 1.0
"""Seconds between two looks at how many workers there are."""
ASK = "__import__('setwright.catalogue.version', fromlist=['own_version']).own_version()"
"""What a new worker is asked, as text for `eval`: one without setwright cannot read a task, and never answers."""


@dataclass(frozen=True)
class Tls:
    """The files of a mutual TLS connection: who signs, this side's certificate and its key."""

    authority: Path
    certificate: Path
    key: Path


class Cluster:
    """A client of one scheduler; its tasks go to whichever of its workers is free."""

    def __init__(self, address: str, tls: Tls | None = None) -> None:
        self.address = address
        check_address(address, tls)
        self.client = client_of(address, tls)
        self.executor = self.client.get_executor(pure=False)
        self.counted, self.looked = 0, 0.0
        self.known: set[str] = set()
        try:
            if not self.workers:
                raise SetwrightError(Fault(address, "has no workers", "start `dask worker ADDRESS --nthreads 1` first"))
        except SetwrightError:
            self.close(True)
            raise

    @property
    def workers(self) -> int:
        """Threads of all workers, looked up once a second; what was last known while there are none."""
        if not self.counted or time.monotonic() - self.looked >= LOOK:
            self.look()
        return self.counted

    def look(self) -> None:
        """Count the workers, and ask those that are new for their version."""
        self.looked = time.monotonic()
        threads = self.client.scheduler_info(n_workers=-1).get("workers", {}) if self.reached() else {}
        self.counted = sum(int(worker["nthreads"]) for worker in threads.values()) or self.counted
        new = sorted(set(threads) - self.known)
        if new:
            said = self.client.run(eval, ASK, workers=new, on_error="return")
            refuse_strangers(said)
            # One that could not be reached yet is asked again at the next look.
            self.known.update(worker for worker, answer in said.items() if isinstance(answer, str))

    def reached(self) -> bool:
        return self.client.status == "running" and self.client.scheduler_comm is not None

    def submit(self, work: Work, task: Task) -> Future[bytes]:
        self.check()
        future: Future[bytes] = self.executor.submit(work, task)
        return future

    def deadly(self, error: BaseException) -> bool:
        """Dask gives a task up after several workers died under it."""
        return isinstance(error, CancelledError) or type(error).__name__ == "KilledWorker"

    def renew(self) -> None:
        return None

    def check(self) -> None:
        if not self.reached():
            remedy = "what is done is stored: start the scheduler and its workers, then run the same command"
            raise SetwrightError(Fault(self.address, "the cluster's scheduler is gone", remedy))
        if time.monotonic() - self.looked >= LOOK:
            self.look()

    def close(self, at_once: bool) -> None:
        with suppress(Exception):
            self.executor.shutdown(wait=False)
        with suppress(Exception):
            self.client.close(timeout=2)


def refuse_strangers(said: Mapping[str, Any]) -> None:
    """Raise where workers say another version than this one's, or have none; one not reached is passed over."""
    here, remedy = own_version(), "give every worker the same setwright, solvers and catalogue"
    faults = [
        Fault(worker, f"this worker has setwright {found}, expected {here}", remedy)
        for worker, found in sorted(said.items())
        if isinstance(found, str) and found != here
    ]
    faults += [
        Fault(worker, f"this worker cannot load setwright: {found}", remedy)
        for worker, found in sorted(said.items())
        if isinstance(found, ImportError | AttributeError)
    ]
    if faults:
        raise SetwrightError(faults)


def check_address(address: str, tls: Tls | None) -> None:
    """Refuse an address that is none, and TLS files that do not go with it."""
    kind = address.partition("://")[0]
    if kind not in ("tcp", "tls") or not address.rpartition(":")[2].isdigit():
        raise UsageFault(Fault("--cluster", f"{address!r} is no address", "write tcp://HOST:PORT or tls://HOST:PORT"))
    if (kind == "tls") != (tls is not None):
        remedy = "a tls:// address takes --tls-ca, --tls-cert and --tls-key; a tcp:// address takes none of them"
        raise UsageFault(Fault("--cluster", f"{address!r} and the TLS files do not go together", remedy))
    for path in () if tls is None else (tls.authority, tls.certificate, tls.key):
        if not path.is_file():
            raise UsageFault(Fault(str(path), "is not there", "name a PEM file"))


def client_of(address: str, tls: Tls | None) -> Any:
    """The connected client; raises SetwrightError where the library or the scheduler is missing."""
    try:
        dask: Any = import_module("dask")
        distributed: Any = import_module("distributed")
    except ModuleNotFoundError:
        remedy = "pip install 'setwright[cluster]'"
        raise SetwrightError(Fault("--cluster", "needs dask.distributed, which is not installed", remedy)) from None
    logging.getLogger("distributed").setLevel(logging.CRITICAL)
    # A lost scheduler ends the run at once: the store knows what is done, so nothing is gained by waiting.
    dask.config.set({"distributed.comm.retry.count": 0, "distributed.comm.timeouts.connect": CONNECT})
    security = None
    if tls is not None:
        files = {"tls_ca_file": tls.authority, "tls_client_cert": tls.certificate, "tls_client_key": tls.key}
        security = distributed.Security(require_encryption=True, **{name: str(path) for name, path in files.items()})
    try:
        return distributed.Client(
            address, security=security, timeout=CONNECT, set_as_default=False, direct_to_workers=False
        )
    except (OSError, TimeoutError) as error:
        said = f"no scheduler answers: {error or type(error).__name__}"
        remedy = "start `dask scheduler` and check the address and the certificates"
        raise SetwrightError(Fault(address, said, remedy)) from None
