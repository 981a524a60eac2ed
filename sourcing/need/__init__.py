"""The need: what the repair calls for, with its tolerances."""
