"""Laws are tried on the same examples each time, without a clock, so that a slow or unlucky run proves nothing."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("house", deadline=None, derandomize=True)
settings.load_profile("house")
