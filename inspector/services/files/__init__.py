"""The files made of an inspection: report, signed revisions, yard's list, tables, bundle.

Start: `services/files/report_files.py`.
"""
