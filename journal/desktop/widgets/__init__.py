"""Pieces that pages and panes share."""
