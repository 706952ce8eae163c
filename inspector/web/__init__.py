"""The pages, one blueprint per step of the job: parse, call, render. Forms are made from fields.

Start: `web/factory.py` lists the blueprints, `web/security.py` decides who may reach what.
"""
