"""Dynamic positioning: equipment, trials, thrust.

Start: `criteria/positioning/dp_equipment.py`.
"""
