"""The commands: one thin file a command group; parse, call, print. The outermost door stands here."""

from __future__ import annotations

import io
import os
import sys

UNFORESEEN = 70
"""Exit status of an error nobody foresaw (EX_SOFTWARE of the BSD sysexits)."""


def main() -> None:
    """Run the command line. The one place where mistakes and unforeseen errors become text and an exit status."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    try:
        try:
            _run()
        finally:
            sys.stdout.flush()
    except OSError as error:
        if not isinstance(error, BrokenPipeError):
            reason = (error.strerror or "refused").lower()
            print(f"What was found could not be written out ({reason}); what was asked is done.", file=sys.stderr)
        # The reader of our output has gone: there is nobody left to tell.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(1)


def _run() -> None:
    from sourcing.figures import leave_docstrings

    leave_docstrings()
    from sourcing.cli.app import app
    from sourcing.cli.door import tell_mistakes, tell_usage
    from sourcing.files.findings import Mistakes, WrongWords

    as_json = "--json" in sys.argv[1:]
    try:
        app(prog_name="springwright")
    except Mistakes as mistakes:
        tell_mistakes(mistakes.findings, as_json)
        sys.exit(2 if isinstance(mistakes, WrongWords) else 1)
    except SystemExit as end:
        if end.code == 2 and as_json:
            tell_usage(sys.argv[1:])
        raise
    except OSError:
        raise
    except Exception as error:
        if os.environ.get("SPRINGWRIGHT_TRACEBACK"):
            raise
        print(f"springwright met something it did not foresee: {type(error).__name__}: {error}", file=sys.stderr)
        print(
            "Please report it with your files; SPRINGWRIGHT_TRACEBACK=1 before the command shows where.",
            file=sys.stderr,
        )
        sys.exit(UNFORESEEN)
