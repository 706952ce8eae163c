"""The chapters of the conversion of one inspection, each calculated once for all its pages.

Start: `services/conversion/conversion_chapters.py`.
"""
