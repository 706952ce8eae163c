"""Fuel: what a log says is burned a day at a speed, and what the tanks hold.

Start: `conversion/range/fuel/fuel_by_speed.py`.
"""
