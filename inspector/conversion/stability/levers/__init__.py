"""Righting levers after the changes, from KN or GZ of the booklet, and the criteria read off them.

Start: `conversion/stability/levers/levers_after.py`.
"""
