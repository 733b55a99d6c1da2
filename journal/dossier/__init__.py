"""Gaps in the record, and the document for a buyer, a valuer or the owner."""
