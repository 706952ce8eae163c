"""What every criterion is made of: source, bands, judgement, orders of inputs, and the reader of
declared criteria.

Start: `criteria/core/criterion.py`, `criteria/core/declared.py`.
"""
