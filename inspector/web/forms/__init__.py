"""Fields of the pages, and forms made from the one kind of field.

Start: `web/forms/form_fields.py`.
"""
