"""Loading after the conversion: departure, arrival, worst and as inspected, with ballast.

Start: `conversion/stability/loading/loading_conditions.py`.
"""
