"""What the conversion costs, with its spread.

Start: `conversion/money/calculation.py`.
"""
