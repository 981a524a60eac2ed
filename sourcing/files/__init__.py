"""The one door to YAML and to the disk: places, findings (mistakes as values), and the reader's event loop."""
