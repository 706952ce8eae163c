"""The inspection read once from its state (`assess/from_state.py` makes `assess/recorded.py`),
then pure functions of that record: judging, condition, certificates, the round of a visit, surveys
due.

Start: `assess/assessment.py`.
"""
