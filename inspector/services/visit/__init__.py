"""The visit, without Flask: how much time is left, the round for it, what cannot be had.

Start: `services/visit/rounds.py`.
"""
