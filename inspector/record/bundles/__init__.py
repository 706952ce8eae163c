"""What travels in one file: bundles of an inspection, and files that a device saved.

Start: `record/bundles/bundle.py`.
"""
