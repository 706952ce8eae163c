"""The record as data: tables of a workbook, CSV and JSON, and the schema of the JSON.

Start: `report/data_files/spreadsheets.py`.
"""
