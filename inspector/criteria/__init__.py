"""Published criteria as pure functions: a reading goes in, a judgement with its limit, margin and source comes out.

This room knows nothing of Flask, files, checklists or the clock. It may import ``inspector.errors`` and
``inspector.quantities``, nothing else of ours. Import the module you need (``inspector.criteria.registry``), not this
package.
"""
