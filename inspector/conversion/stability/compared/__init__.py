"""What of weights is typed twice or does not add up: named, never guessed.

Start: `conversion/stability/compared/contents_and_displacement.py`.
"""
