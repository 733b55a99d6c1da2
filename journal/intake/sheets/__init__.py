"""Spreadsheets into records: the file, its headings, what its columns are, what its rows say."""
