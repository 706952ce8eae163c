"""Servers that listen, for this computer and for devices, and that can be stopped again.

Start: `sharing/network/doors.py`.
"""
