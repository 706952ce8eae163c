"""The app on a device: its files, our own Python among them, and how they travel.

Start: `web/on_device/offline.py`.
"""
