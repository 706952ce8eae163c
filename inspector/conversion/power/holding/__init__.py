"""Wind and current that thrusters hold, whole and after a failure.

Start: `conversion/power/holding/holding_power.py`.
"""
