"""`python3 -m inspector ...`: the commands; in a bare checkout it sets itself up first."""

import sys

from inspector.cli import fresh_machine

if __name__ == "__main__":
    fresh_machine.run_again_where_installed("inspector", sys.argv[1:])
    from inspector.cli.parser import main

    sys.exit(main(sys.argv[1:]))
