"""What the chapters share: spans of figures, bounds, drawings.

Start: `conversion/core/chapter.py`.
"""
