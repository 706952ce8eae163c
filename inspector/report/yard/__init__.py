"""The work as a yard prices it: numbered items as a PDF and as a workbook.

Start: `report/yard/scope_items.py`.
"""
