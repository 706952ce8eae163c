"""The web side: one blueprint per step of the job. Views parse, call and render; what they call lies in the rooms below."""
