"""`python -m sourcing` is `springwright`."""

from sourcing.cli import main

main()
