"""The round of a visit: which looks are worth the time aboard, for one person or several.

Start: `assess/round/composition.py`.
"""
