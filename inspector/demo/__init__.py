"""The invented portfolio of `inspector demo`: three candidates of one brief; no vessel, person or place in it exists."""
