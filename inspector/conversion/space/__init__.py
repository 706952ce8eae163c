"""Cabins, areas and tonnage.

Start: `conversion/space/calculation.py`.
"""
