"""The sections of the report, in order.

Start: `report/sections/front_matter.py`.
"""
