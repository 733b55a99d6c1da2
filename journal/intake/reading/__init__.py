"""Receipts read from their paper: words out of PDFs and pictures, and fields out of words."""
