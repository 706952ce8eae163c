"""Cargo ship, special purpose ship or passenger ship: what each means for the persons aboard.

Start: `conversion/ship_kind/ship_kinds.py`.
"""
