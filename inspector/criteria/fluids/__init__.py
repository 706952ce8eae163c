"""Condition and cleanliness of oils.

Start: `criteria/fluids/oil_condition.py`.
"""
