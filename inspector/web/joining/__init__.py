"""Sharing with phones and tablets: the laptop's pages of it, and those where a phone comes in.

Start: `web/joining/sharing_page.py`.
"""
