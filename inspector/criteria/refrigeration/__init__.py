"""Refrigerants, their leaks, and cold stores.

Start: `criteria/refrigeration/refrigerant_cycle.py`.
"""
