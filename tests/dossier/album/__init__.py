"""Tests of the web album."""
