"""The door between the walk page and the modules that run on the device itself.

Start: `in_browser/door.py`.
"""
