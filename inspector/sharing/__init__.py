"""Phones and tablets on the network: addresses, the private authority, one-time codes, devices
and their tokens.

Start: `sharing/shared_inspections.py`.
"""
