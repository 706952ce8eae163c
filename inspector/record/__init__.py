"""What was recorded: entries, journal, state, photos, bundles, catalogue. The only room that
writes recorded data.

Start: `record/inspection.py`.
"""
