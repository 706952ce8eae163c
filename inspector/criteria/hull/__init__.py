"""Thickness, corrosion, rust, draughts and roll.

Start: `criteria/hull/thickness.py`.
"""
