"""The dossier: what the record says, what it lacks, and the document made of both."""
