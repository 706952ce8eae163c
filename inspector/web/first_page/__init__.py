"""The list of inspections, and what is brought in to it.

Start: `web/first_page/home.py`.
"""
