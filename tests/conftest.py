"""No test reads or writes the cache folder of whoever runs it."""

import os
from collections.abc import Iterator
from pathlib import Path
from unittest.mock import patch

import pytest


@pytest.fixture(autouse=True, scope="session")
def own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    folder = tmp_path_factory.mktemp("cache")
    with patch.dict(os.environ, XDG_CACHE_HOME=str(folder)):
        yield folder
