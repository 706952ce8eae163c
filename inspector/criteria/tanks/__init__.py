"""Coatings, quantities and contents of tanks.

Start: `criteria/tanks/coating.py`.
"""
