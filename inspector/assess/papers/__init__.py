"""The papers of a vessel on a day: certificates, and the surveys that come due.

Start: `assess/papers/certificates.py`.
"""
