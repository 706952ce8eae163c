"""What the conversion does, a folder per chapter, each with `particulars` (what is typed),
`calculation` (figures), `presentation` (tables, drawings, sentences) and `chapter` (the three
together).

Start: `conversion/contents.py` lists the chapters.
"""
