"""The commands, one module per group; the set-up of a bare checkout.

Start: `cli/parser.py` lists every command.
"""
