"""What a stability booklet prints: its tables, and what is read between their rows.

Start: `conversion/stability/booklet/hydrostatic_table.py`.
"""
