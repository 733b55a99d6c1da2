"""Durable writing: atomic replacement, verified copies, safe names, packaged assets."""
