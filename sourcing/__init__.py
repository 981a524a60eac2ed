"""springwright: from a broken coil spring to a working thing. See DEVELOPERS.md for the map of the rooms."""
