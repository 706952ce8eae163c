"""The word on each system and unit, its reasons, and the work that follows.

Start: `assess/verdict/unit_rules.py`.
"""
