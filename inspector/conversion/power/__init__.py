"""Generators and loads in each condition, and what one failure takes.

Start: `conversion/power/load_balance.py`.
"""
