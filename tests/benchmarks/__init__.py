"""What asking costs, measured beside floors in one loop. Nothing here is a test: ratios are for people to read."""
