"""Entry to spaces, fire fighting, services due, landing area, bridge view.

Start: `criteria/safety/service_dates.py`.
"""
