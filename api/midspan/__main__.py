"""python -m midspan is the command midspan."""

from midspan.cli import main

main(prog_name="midspan")
