"""Commands are run here as in tests/cli."""

from tests.cli.conftest import run

__all__ = ["run"]
