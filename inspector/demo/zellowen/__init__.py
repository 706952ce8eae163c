"""The best of the candidates, seen whole: a platform supply vessel, sheet by sheet.

Start: `demo/zellowen/zellowen.py`.
"""
