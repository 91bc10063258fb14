"""`tankside` and `python -m tankside`."""

from __future__ import annotations


def main() -> None:
    """Hand over to the terminal face."""
    from tankside.cli.command import command  # noqa: PLC0415 - keeps `import tankside` light

    command()


if __name__ == "__main__":
    main()
