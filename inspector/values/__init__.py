"""Units, numbers, the one kind of field, the vocabulary, figures and their formatting.

Start: `values/field.py`, `values/vocabulary.py`.
"""
