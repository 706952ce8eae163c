"""What is set beside the figures of range: claims, and another table of the same thing.

Start: `conversion/range/compared/two_tables.py`.
"""
