"""Ballast, air, oil and sewage, paints and hazardous materials.

Start: `criteria/environment/pollution.py`.
"""
