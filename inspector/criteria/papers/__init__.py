"""Surveys and their windows, bottom inspections, the ship's number.

Start: `criteria/papers/survey_windows.py`.
"""
