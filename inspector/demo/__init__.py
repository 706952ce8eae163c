"""The invented portfolio of `inspector demo`: six candidates of one brief.

No vessel, person or place in it exists.

Start: `demo/portfolio.py`.
"""
