"""Noise.

Start: `criteria/comfort/noise.py`.
"""
