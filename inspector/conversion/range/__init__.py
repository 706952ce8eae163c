"""Speed, fuel, range and stores.

Start: `conversion/range/passages.py`.
"""
