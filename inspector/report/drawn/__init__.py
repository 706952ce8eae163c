"""Drawings of the conversion as marks in a box, for page and report alike.

Start: `report/drawn/geometry.py`.
"""
