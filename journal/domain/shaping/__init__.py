"""Making the drawing one's own: each act takes a drawing and gives the changed one.

Every act refuses with one sentence and then changes nothing. All numbers of a changed shape are
those its written form keeps, so that what is stored is what was seen.
"""
