"""An existing Dask cluster as workers. Scans and parts are sent to it; it needs no file of this machine.

Whoever reaches a cluster runs code on it and reads what is sent, so TLS is expected on both sides.
"""

from __future__ import annotations

import logging
import queue
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from stylobate import __version__
from stylobate.batch.run import Workers
from stylobate.batch.work import Done, Options, Order, work
from stylobate.core.errors import UsageError
from stylobate.parts.model import PartsFolder

ANSWER_S = 10.0
"""How long to wait for the cluster's first answer."""
AHEAD = 2
"""Scans that are sent for each thread of the cluster: one at work, one waiting."""

Tls = tuple[Path | None, Path | None, Path | None]


def cluster(address: str, tls: Tls, plain_text: bool, limit_s: float) -> Workers:
    """The workers of the cluster at `address`. tls: authority, certificate and key (Dask's own configuration if none).

    Raises UsageError: the extra is not installed, plain text without leave; later: no answer, no workers, other
    versions.
    """
    try:
        import distributed
    except ImportError as error:
        raise UsageError("--cluster needs the extra: install 'stylobate[cluster]'") from error
    if not address.startswith(("tls://", "tcp://")):
        raise UsageError(f"--cluster {address}: write it like tls://host:8786")
    encrypted = address.startswith("tls://")
    if not encrypted and not plain_text:
        raise UsageError(
            f"--cluster {address}: this is not encrypted, and whoever reaches it runs code and reads the scans; use a"
            " tls:// address, or --plain-text if the network is yours alone"
        )
    if not encrypted and any(tls):
        raise UsageError(f"--cluster {address}: --tls-ca, --tls-cert and --tls-key go with a tls:// address")

    def measure(orders: Iterable[Order], parts: PartsFolder, options: Options) -> Iterator[Done]:
        with _client(distributed, address, tls if encrypted else None) as client:
            threads = _ready(client, address)
            yield from _all(client, threads, orders, parts, options, limit_s)

    return measure


@contextmanager
def _client(distributed: Any, address: str, tls: Tls | None) -> Iterator[Any]:
    for name in [name for name in logging.root.manager.loggerDict if name.split(".")[0] == "distributed"]:
        logging.getLogger(name).setLevel(logging.CRITICAL)
    security = None if tls is None else _security(distributed, tls)
    try:
        client = distributed.Client(address, timeout=ANSWER_S, security=security, set_as_default=False)
    except (OSError, TimeoutError, ValueError, RuntimeError) as error:
        reason = " ".join(str(error).split())[:160]
        raise UsageError(
            f"--cluster {address}: does not answer within {ANSWER_S:g} s ({reason}); check the address, its"
            " certificates, and that the scheduler runs"
        ) from error
    try:
        yield client
    finally:
        client.close(timeout=ANSWER_S)


def _security(distributed: Any, tls: Tls) -> Any:
    names = ("tls_ca_file", "tls_client_cert", "tls_client_key")
    given = {name: str(path) for name, path in zip(names, tls, strict=True) if path is not None}
    missing = [path for path in given.values() if not Path(path).is_file()]
    if missing:
        raise UsageError(f"{missing[0]}: no such file; name the certificate or key")
    try:
        security = distributed.Security(**given, require_encryption=True)
        context = security.get_connection_args("client").get("ssl_context")
    except (OSError, ValueError) as error:
        raise UsageError(f"--tls-ca, --tls-cert, --tls-key: {error}; name PEM files that belong together") from error
    if context is None:
        raise UsageError(
            "a tls:// cluster asks for certificates: name --tls-ca, --tls-cert and --tls-key, or set them in Dask's"
            " configuration"
        )
    return security


def _version() -> str:
    import stylobate

    return stylobate.__version__


def _ready(client: Any, address: str) -> int:
    """Threads of the cluster. Raises UsageError where it has none, or its workers have another version of us."""
    try:
        threads = sum(client.nthreads().values())
        found = client.run(_version) if threads else {}
    except Exception as error:
        raise UsageError(
            f"--cluster {address}: its workers cannot run this program ({type(error).__name__}); install stylobate"
            f" {__version__} there"
        ) from error
    if not threads:
        raise UsageError(f"--cluster {address}: it has no workers; start some")
    others = {str(version) for version in found.values()} - {__version__}
    if others:
        raise UsageError(
            f"--cluster {address}: its workers have stylobate {', '.join(sorted(others))}, here is {__version__};"
            " install the same"
        )
    return int(threads)


def _all(
    client: Any, threads: int, orders: Iterable[Order], parts: PartsFolder, options: Options,
    limit_s: float,
) -> Iterator[Done]:  # fmt: skip
    """Send scans as others come back, so that only a few are on their way at any time."""
    shared = client.scatter(parts, broadcast=True, hash=False)
    todo = iter(orders)
    waiting: dict[Any, str] = {}
    coming: queue.SimpleQueue[Any] = queue.SimpleQueue()

    def send() -> Iterator[Done]:
        """One more scan on its way; those that cannot be read on the way there are done with."""
        for order in todo:
            try:
                full = Order(order.key, order.path, order.path.read_bytes())
            except OSError as error:
                yield Done(order.key, "refused", f"{order.path}: {(error.strerror or str(error)).lower()}")
                continue
            future = client.submit(work, client.scatter(full, hash=False), shared, options, pure=False, retries=0)
            waiting[future] = order.key
            future.add_done_callback(coming.put)
            return

    for _ in range(AHEAD * threads):
        yield from send()
    while waiting:
        try:
            future = coming.get(timeout=limit_s)
        except queue.Empty as error:
            raise UsageError(
                f"nothing came back from the cluster for {limit_s / 60:g} min; run the same command again"
            ) from error
        if client.status != "running":
            raise UsageError("the cluster has gone; what came back is kept; run the same command again to go on")
        yield _result(future, waiting.pop(future))
        yield from send()


def _result(future: Any, key: str) -> Done:
    try:
        done = future.result()
    except Exception as error:
        return Done(key, "failed", f"the cluster failed over it ({type(error).__name__})")
    finally:
        future.release()
    return done if isinstance(done, Done) else Done(key, "failed", "the cluster answered something else")
