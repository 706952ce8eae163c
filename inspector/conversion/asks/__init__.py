"""What the brief asks against what the vessel gives, one line each, worst first.

Start: `conversion/asks/ask_lines.py`.
"""
