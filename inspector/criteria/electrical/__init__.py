"""Insulation, breakers, loading, unbalance, shore supply, heat pictures.

Start: `criteria/electrical/machine_insulation.py`.
"""
