"""Reads the checklist folder and the registry of all criteria.

Start: `checklists/loader.py`, `checklists/registry.py`.
"""
