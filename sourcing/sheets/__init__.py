"""What the user sees: text for a terminal and JSON, rendered from the same values."""
