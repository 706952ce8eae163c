"""Rules and certificates that the new use asks for.

Start: `conversion/papers/calculation.py`.
"""
