"""Figures as people write them, and as they are shown."""
