"""Published criteria as pure functions: a reading goes in, a judgement with its limit, margin and
source comes out.

This room knows nothing of Flask, files, checklists or the clock. It may import
``inspector.values``, nothing else of ours. Import the module that you need, or ask
``inspector.checklists.registry`` for a criterion by its name.

Start: `criteria/core/criterion.py`; criteria that only compare are data in `checklists/criteria/`
at the top.
"""
