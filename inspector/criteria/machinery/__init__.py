"""Engines, bilge pumping, propellers and thrusters.

Start: `criteria/machinery/engine_vibration.py`.
"""
