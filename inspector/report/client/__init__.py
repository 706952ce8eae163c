"""The client's two pages: what is to be settled, what she costs, what is asked and offered.

Start: `report/client/client_summary.py`.
"""
