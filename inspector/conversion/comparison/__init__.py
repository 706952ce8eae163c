"""Candidates side by side: scores, ranking, what decides.

Start: `conversion/comparison/calculation.py`.
"""
