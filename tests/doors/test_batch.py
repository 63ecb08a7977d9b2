"""`stylobate batch` as its user runs it: this machine's processes, and a real Dask cluster of two."""

from __future__ import annotations

import csv
import json
import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest

from tests.doors.running import PATIENCE_S, ROOT, environment, refused, run

distributed = pytest.importorskip("distributed", reason="the extra 'cluster' is not installed")


@pytest.fixture(scope="module")
def case(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """scans/ with one scan of one body and one cut short; parts/."""
    folder = tmp_path_factory.mktemp("batch")
    done = run("simulate", "--out", folder / "made", "--arch", "single", "--bodies", 1, "--seed", 3, "--edge", 0.25)
    assert done.returncode == 0, done.stderr
    (folder / "scans").mkdir()
    whole = (folder / "made" / "scan.stl").read_bytes()
    (folder / "scans" / "a.stl").write_bytes(whole)
    (folder / "scans" / "cut.stl").write_bytes(whole[:5000])
    return folder


def rows(out: Path) -> list[dict[str, str]]:
    with (out / "summary.csv").open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def said(done: subprocess.CompletedProcess[str]) -> str:
    """What is on stderr besides the progress of a slow machine."""
    return re.sub(r"^stylobate: \d+ of \d+ scans, about \d+ min left\n", "", done.stderr, flags=re.MULTILINE)


def number(text: str) -> bool:
    return re.fullmatch(r"-?\d+(\.\d+)?(e-?\d+)?", text) is not None


@pytest.fixture(scope="module")
def local(case: Path) -> Path:
    """The output of a batch by this machine's processes."""
    out = case / "local"
    done = run("batch", case / "scans", "--parts", case / "made" / "parts", "--workers", 1, "--out", out)
    assert (done.returncode, said(done)) == (0, "")
    assert "1 of 2 scans measured" in done.stdout
    assert "cut.stl" in done.stdout
    return out


def test_the_table_says_what_the_results_say(local: Path) -> None:
    *found, cut = rows(local)
    assert (Path(cut["scan"]).name, cut["status"]) == ("cut.stl", "refused")
    assert cut["message"]
    sites = json.loads((local / "scans" / "a.stl" / "result.json").read_text())["sites"]
    assert len(found) == len(sites) >= 1
    for row, site in zip(found, sites, strict=True):
        assert (row["site"], row["scan_body"]) == (site["site"], site["scan_body"])
        assert float(row["z"]) == pytest.approx(site["scan_from_connection"][2][3])
        assert float(row["u95_platform_um"]) == pytest.approx(site["u95"]["platform_um"])


def test_the_second_run_has_nothing_to_do_and_strict_counts_the_bad(case: Path, local: Path) -> None:
    before = (local / "summary.csv").read_bytes()
    done = run("batch", case / "scans", "--parts", case / "made" / "parts", "--workers", 1, "--strict", "--out", local)
    assert done.returncode == 4
    assert "2 of them by an earlier run" in done.stdout
    assert (local / "summary.csv").read_bytes() == before


def test_bad_calls_are_one_line(case: Path, tmp_path: Path) -> None:
    parts, scans, out = case / "made" / "parts", case / "scans", tmp_path / "out"
    refused(run("batch", tmp_path / "absent", "--parts", parts, "--out", out), "absent")
    refused(run("batch", parts, "--parts", parts / "parts.toml", "--scan-body", "oak", "--out", out), "oak")
    refused(run("batch", scans, "--parts", parts, "--out", out, "--tls-ca", "x"), "--cluster")
    refused(run("batch", scans, "--parts", parts, "--out", out, "--cluster", "tcp://127.0.0.1:1"), "--plain-text")
    assert not (out / "summary.csv").exists()


def test_a_cluster_that_does_not_answer_is_one_line(case: Path, tmp_path: Path) -> None:
    with socket.socket() as nobody:
        nobody.bind(("127.0.0.1", 0))
        address = f"tcp://127.0.0.1:{nobody.getsockname()[1]}"
        done = run(
            "batch", case / "scans", "--parts", case / "made" / "parts", "--out", tmp_path / "out",
            "--cluster", address, "--plain-text",
        )  # fmt: skip
    refused(done, address, "does not answer")


def certificates(folder: Path) -> list[str]:
    """An authority, a certificate and its key, made by openssl; as options of Dask's commands."""
    ca, key, cert = folder / "ca.pem", folder / "key.pem", folder / "cert.pem"
    make = ["openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2", "-subj", "/CN=Harbour Street"]
    subprocess.run([*make, "-keyout", folder / "ca-key.pem", "-out", ca], check=True, capture_output=True)
    subprocess.run(
        [*make, "-CA", ca, "-CAkey", folder / "ca-key.pem", "-keyout", key, "-out", cert],
        check=True, capture_output=True,
    )  # fmt: skip
    return ["--tls-ca-file", str(ca), "--tls-cert", str(cert), "--tls-key", str(key)]


@pytest.fixture(scope="module")
def cluster(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, list[str]]]:
    """A scheduler and two workers in processes of their own, over TLS: address, and our options for it."""
    folder = tmp_path_factory.mktemp("cluster")
    tls = certificates(folder)
    note = folder / "scheduler.json"
    common = ["--scheduler-file", str(note), "--no-dashboard", *tls]
    commands = [
        ["dask_scheduler", "--host", "tls://127.0.0.1", "--port", "0", *common],
        *(
            ["dask_worker", "--nthreads", "1", "--no-nanny", "--local-directory", str(folder / str(k)), *common]
            for k in range(2)
        ),
    ]
    with ExitStack() as stack:
        for command in commands:
            process = stack.enter_context(
                subprocess.Popen(
                    [sys.executable, "-m", f"distributed.cli.{command[0]}", *command[1:]],
                    stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=environment(), cwd=ROOT,
                )
            )  # fmt: skip
            stack.callback(process.kill)
            until = time.monotonic() + PATIENCE_S
            while not note.exists() and time.monotonic() < until:
                time.sleep(0.05)
        address = str(json.loads(note.read_text())["address"])
        security = distributed.Security(
            tls_ca_file=tls[1], tls_client_cert=tls[3], tls_client_key=tls[5], require_encryption=True
        )
        with distributed.Client(address, security=security, set_as_default=False, timeout=PATIENCE_S) as client:
            client.wait_for_workers(2, timeout=PATIENCE_S)
        yield address, ["--tls-ca", tls[1], "--tls-cert", tls[3], "--tls-key", tls[5]]


def test_a_cluster_gives_what_this_machine_gives(
    case: Path, local: Path, cluster: tuple[str, list[str]], tmp_path: Path
) -> None:
    address, tls = cluster
    assert address.startswith("tls://")
    common = (
        "batch",
        case / "scans",
        "--parts",
        case / "made" / "parts",
        "--out",
        tmp_path / "out",
        "--cluster",
        address,
    )
    done = run(*common, *tls)
    assert (done.returncode, said(done)) == (0, "")
    for here, there in zip(rows(local), rows(tmp_path / "out"), strict=True):
        for name in set(here) - {"seconds"}:
            # Linear algebra on another number of threads sums in another order: that is rounding, not another answer.
            same = there[name] if not number(here[name]) else pytest.approx(float(there[name]), rel=1e-5, abs=1e-6)
            assert (float(here[name]) if number(here[name]) else here[name]) == same, name
    common = (*common[:4], "--out", tmp_path / "other", "--cluster", address)
    refused(run(*common), "--tls-cert")
