"""Weights, free surfaces and righting levers after the change.

Start: `conversion/stability/calculation.py`.
"""
