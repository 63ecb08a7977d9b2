"""`stylobate package`: a case as one file for the laboratory."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.core.errors import UsageError


@click.command()
@click.argument("folder", metavar="[CASE]", required=False, type=click.Path(path_type=Path))
@click.option("--out", type=click.Path(path_type=Path), metavar="FILE", help="The package, a zip.")
@click.option("--sign", type=click.Path(path_type=Path), metavar="KEY", help="Sign it with this private key (Ed25519).")
@click.option("--with-names", is_flag=True, help="Hand over a case that keeps names in its scans.")
@click.option("--new-key", type=click.Path(path_type=Path), metavar="FILE",
              help="Make a key to sign with instead: FILE, and FILE.pub to give away.")  # fmt: skip
def command(folder: Path | None, out: Path | None, sign: Path | None, with_names: bool, new_key: Path | None) -> None:
    """Write a hand-off package: the case, its surfaces, poses and report in one file that proves itself whole.

    Surfaces are in scan coordinates: the scan, the scan with each body replaced by its exact CAD, scan bodies and
    placed parts as STL, PLY and glTF. Poses with covariances are JSON and CSV. What is missing or not released
    stands in the report; it does not stop the package.
    """
    if new_key is not None:
        if folder is not None or out is not None or sign is not None:
            raise UsageError("--new-key only makes a key; leave the rest out")
        from stylobate.handoff import sign as signing

        click.echo(f"{new_key}: keep it to yourself. {new_key}.pub: give it to who receives. Fingerprint:")
        click.echo(signing.new_key(new_key))
        return
    if folder is None or out is None:
        raise UsageError(
            "a package needs a CASE and --out FILE, like 'stylobate package cases/h-0421 --out h-0421.zip'"
        )
    from stylobate.handoff import pack
    from stylobate.handoff.sign import private_key

    made = pack(folder, out, None if sign is None else private_key(sign), with_names)
    total = sum(entry.bytes for entry in made.files.values())
    click.echo(f"{out}: {len(made.files)} files, {total / 1e6:.1f} MB unpacked{', signed' if sign else ''}")
    click.echo(f"log head {made.log_head}")
