"""The catalogue: springs in the drawer and on suppliers' lists, spools of wire, and the bench itself."""
