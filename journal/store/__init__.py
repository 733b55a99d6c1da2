"""One journal folder: schema, edits, originals, queries, backup. The only SQL."""
