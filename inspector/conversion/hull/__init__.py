"""Resistance and propulsion of a hull.

Start: `conversion/hull/resistance.py`.
"""
