"""The commands: one thin file a command group; parse, call, print."""
