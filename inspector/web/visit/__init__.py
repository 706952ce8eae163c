"""The visit on pages: the round for the time there is, and the looks for the minutes left.

Start: `web/visit/round_page.py`.
"""
