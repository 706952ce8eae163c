"""The rule book by date: which text applies to the conversion from which day, and what it asks.

Start: `conversion/rule_book/calculation.py`.
"""
