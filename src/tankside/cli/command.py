"""The `tankside` command: nouns are loaded only when they are used, refusals end with exit code 2."""

from __future__ import annotations

from importlib import import_module
from typing import Any

import click

from tankside import __version__
from tankside.core.refusals import Refused

# Each noun is a module of this folder that holds a command of its own name; the sentence is its help.
NOUNS = {
    "start": "Open Tankside in the browser.",
    "roll": "Add, list, find and change rolls.",
    "shelf": "Every bottle: what is left, and until when it is good.",
    "plan": "Make a plan of rolls, or show the latest.",
    "journal": "Every run, or one beside its plan.",
    "curve": "What a step strip tells: speed, contrast, useful range.",
    "temper": "Hot and cold water for a jug at a wanted temperature.",
    "time": "How long to develop at what the developer reads.",
    "wash": "Which fills and how long, or what given fills come to.",
    "capacity": "What a fixer may still take, by count and test piece.",
    "mix": "A published formula for the volume and salts you have.",
    "demo": "Where the invented demo lies; lay it out anew.",
    "backup": "Write everything you keep into one zip file.",
    "restore": "Bring a backup back.",
}
REFUSED = 2


class Nouns(click.Group):
    """Knows every noun by its sentence and loads only the one that is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Every noun, in the order above."""
        del ctx
        return list(NOUNS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of one noun, loaded now."""
        del ctx
        if cmd_name not in NOUNS:
            return None
        command: click.Command = getattr(import_module(f"tankside.cli.{cmd_name}"), cmd_name)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the nouns without loading any."""
        del ctx
        with formatter.section("Commands"):
            formatter.write_dl(list(NOUNS.items()))

    def invoke(self, ctx: click.Context) -> Any:
        """Run; a refusal is told in one sentence each and ends with exit code 2."""
        try:
            return super().invoke(ctx)
        except Refused as no:
            from tankside.wording.refusals import PLAIN, say

            for refusal in no.refusals:
                place = f"{refusal.at}: " if refusal.at and refusal.at.startswith("--") else ""
                click.echo(place + say(refusal, ctx.obj or PLAIN), err=True)
            ctx.exit(REFUSED)


@click.group(cls=Nouns)
@click.version_option(__version__, prog_name="tankside")
def command() -> None:
    """Plan the evening, lead it at the sink, learn from every roll."""
