"""What command line and pages share, without Flask: the open data folder, list, import, export,
report, comparison, units on board, Python for phones.

Start: `services/data_folder.py`.
"""
