"""Assessment and chapters -> PDF and tables.

Start: `report/condition_report.py`.
"""
