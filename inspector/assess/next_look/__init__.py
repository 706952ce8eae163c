"""What to look at next, and whether the look is worth its price.

Start: `assess/next_look/plan.py`.
"""
