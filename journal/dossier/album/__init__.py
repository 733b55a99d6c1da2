"""The web album: the dossier's own values laid out as pages that any browser opens from disk."""
