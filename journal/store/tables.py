"""The tables of a journal, version by version. A released version's tables never change."""

#: The recorded tables of version 1. Their first column is the row number ``id``.
FIRST: dict[str, str] = {
    "car": """
        id INTEGER PRIMARY KEY CHECK (id = 1),
        title TEXT NOT NULL, body TEXT NOT NULL, wheelbase_mm INTEGER NOT NULL,
        length_mm INTEGER NOT NULL, currency TEXT NOT NULL, maker TEXT NOT NULL,
        model TEXT NOT NULL, year TEXT NOT NULL, chassis_number TEXT NOT NULL,
        engine_number TEXT NOT NULL, registration TEXT NOT NULL, colour TEXT NOT NULL,
        owner TEXT NOT NULL, story TEXT NOT NULL, pause_minutes INTEGER NOT NULL,
        stages TEXT NOT NULL""",
    "milestones": """
        id INTEGER PRIMARY KEY, kind TEXT NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL, note TEXT NOT NULL""",
    "originals": """
        id INTEGER PRIMARY KEY, sha256 TEXT NOT NULL UNIQUE, suffix TEXT NOT NULL,
        size INTEGER NOT NULL, mime TEXT NOT NULL, added TEXT NOT NULL""",
    "cameras": """
        id INTEGER PRIMARY KEY, make TEXT NOT NULL, model TEXT NOT NULL, serial TEXT NOT NULL,
        shift_seconds INTEGER NOT NULL, UNIQUE (make, model, serial)""",
    "photos": """
        id INTEGER PRIMARY KEY,
        sha256 TEXT NOT NULL UNIQUE REFERENCES originals (sha256),
        name TEXT NOT NULL, kind TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL,
        latest TEXT NOT NULL, basis TEXT NOT NULL, utc_offset TEXT, candidates TEXT NOT NULL,
        camera_id INTEGER REFERENCES cameras (id), sequence INTEGER, width INTEGER NOT NULL,
        height INTEGER NOT NULL, orientation INTEGER, turn INTEGER NOT NULL,
        latitude REAL, longitude REAL, caption TEXT NOT NULL, damage TEXT NOT NULL,
        removed INTEGER NOT NULL""",
    "views": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, width REAL NOT NULL,
        height REAL NOT NULL, rank INTEGER NOT NULL""",
    "panels": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL, side TEXT NOT NULL, system TEXT NOT NULL,
        UNIQUE (name, side)""",
    "shapes": """
        id INTEGER PRIMARY KEY, panel_id INTEGER NOT NULL REFERENCES panels (id),
        view_id INTEGER NOT NULL REFERENCES views (id), path TEXT NOT NULL,
        rank INTEGER NOT NULL""",
    "decor": """
        id INTEGER PRIMARY KEY, view_id INTEGER NOT NULL REFERENCES views (id),
        path TEXT NOT NULL, weight TEXT NOT NULL, rank INTEGER NOT NULL""",
    "pins": """
        id INTEGER PRIMARY KEY, photo_id INTEGER NOT NULL REFERENCES photos (id),
        panel_id INTEGER NOT NULL REFERENCES panels (id), view_id INTEGER REFERENCES views (id),
        x REAL, y REAL, facing REAL, UNIQUE (photo_id, panel_id)""",
    "areas": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL, found TEXT NOT NULL, done TEXT NOT NULL,
        cautions TEXT NOT NULL""",
    "area_panels": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        panel_id INTEGER NOT NULL REFERENCES panels (id), UNIQUE (area_id, panel_id)""",
    "stage_changes": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        stage TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        note TEXT NOT NULL""",
    "area_photos": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        photo_id INTEGER NOT NULL REFERENCES photos (id), role TEXT NOT NULL,
        rank INTEGER NOT NULL, UNIQUE (area_id, photo_id)""",
    "entries": """
        id INTEGER PRIMARY KEY, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        text TEXT NOT NULL, area_id INTEGER REFERENCES areas (id),
        panel_id INTEGER REFERENCES panels (id)""",
    "anchors": """
        id INTEGER PRIMARY KEY, view_id INTEGER NOT NULL REFERENCES views (id), x REAL NOT NULL,
        y REAL NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, radius_mm REAL NOT NULL""",
    "seams": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        view_id INTEGER NOT NULL REFERENCES views (id), path TEXT NOT NULL, joint TEXT NOT NULL,
        spacing_mm REAL, note TEXT NOT NULL""",
    "seam_changes": """
        id INTEGER PRIMARY KEY, seam_id INTEGER NOT NULL REFERENCES seams (id),
        state TEXT NOT NULL, start_mm REAL NOT NULL, end_mm REAL NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL, note TEXT NOT NULL, photos TEXT NOT NULL""",
    "patches": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        view_id INTEGER NOT NULL REFERENCES views (id), path TEXT NOT NULL,
        thickness_mm REAL NOT NULL, steel TEXT NOT NULL, note TEXT NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL""",
    "measures": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL, kind TEXT NOT NULL,
        view_id INTEGER NOT NULL REFERENCES views (id), points TEXT NOT NULL, unit TEXT NOT NULL,
        target TEXT, tolerance TEXT, area_id INTEGER REFERENCES areas (id),
        panel_id INTEGER REFERENCES panels (id)""",
    "readings": """
        id INTEGER PRIMARY KEY, measure_id INTEGER NOT NULL REFERENCES measures (id),
        point INTEGER NOT NULL, value TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL,
        latest TEXT NOT NULL, moment TEXT NOT NULL, instrument TEXT NOT NULL, note TEXT NOT NULL""",
    "underlays": """
        id INTEGER PRIMARY KEY, view_id INTEGER NOT NULL UNIQUE REFERENCES views (id),
        sha256 TEXT NOT NULL REFERENCES originals (sha256), matrix TEXT NOT NULL,
        strength REAL NOT NULL, shown INTEGER NOT NULL""",
    "receipts": """
        id INTEGER PRIMARY KEY, supplier TEXT NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL, currency TEXT NOT NULL, paper TEXT NOT NULL,
        printed_total INTEGER, rate TEXT NOT NULL, stands_in TEXT NOT NULL, note TEXT NOT NULL,
        tax INTEGER, refund_of INTEGER REFERENCES receipts (id), read_text TEXT NOT NULL""",
    "receipt_papers": """
        id INTEGER PRIMARY KEY, receipt_id INTEGER NOT NULL REFERENCES receipts (id),
        sha256 TEXT NOT NULL REFERENCES originals (sha256), rank INTEGER NOT NULL,
        UNIQUE (receipt_id, sha256)""",
    "lines": """
        id INTEGER PRIMARY KEY, receipt_id INTEGER NOT NULL REFERENCES receipts (id),
        rank INTEGER NOT NULL, text TEXT NOT NULL, quantity TEXT NOT NULL,
        amount INTEGER NOT NULL, category TEXT NOT NULL, condition TEXT NOT NULL,
        new_price INTEGER, spread TEXT NOT NULL""",
    "line_shares": """
        id INTEGER PRIMARY KEY, line_id INTEGER NOT NULL REFERENCES lines (id),
        area_id INTEGER NOT NULL REFERENCES areas (id), weight INTEGER NOT NULL,
        rank INTEGER NOT NULL, UNIQUE (line_id, area_id)""",
    "work": """
        id INTEGER PRIMARY KEY, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        minutes INTEGER NOT NULL, person TEXT NOT NULL, note TEXT NOT NULL""",
    "work_shares": """
        id INTEGER PRIMARY KEY, work_id INTEGER NOT NULL REFERENCES work (id),
        area_id INTEGER NOT NULL REFERENCES areas (id), weight INTEGER NOT NULL,
        rank INTEGER NOT NULL, UNIQUE (work_id, area_id)""",
}

#: The tables that version 2 adds: people and clocks, indices, surveys, buying, proof.
SECOND: dict[str, str] = {
    "people": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, kind TEXT NOT NULL, rate INTEGER,
        note TEXT NOT NULL""",
    "clockings": """
        id INTEGER PRIMARY KEY, person TEXT NOT NULL, started TEXT NOT NULL, stopped TEXT,
        note TEXT NOT NULL, shares TEXT NOT NULL, work_id INTEGER UNIQUE REFERENCES work (id)""",
    "photo_spans": """
        id INTEGER PRIMARY KEY, work_id INTEGER NOT NULL UNIQUE REFERENCES work (id),
        first_photo INTEGER NOT NULL REFERENCES photos (id),
        last_photo INTEGER NOT NULL REFERENCES photos (id)""",
    "price_indices": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, currency TEXT NOT NULL,
        source TEXT NOT NULL, chosen INTEGER NOT NULL""",
    "index_values": """
        id INTEGER PRIMARY KEY, index_id INTEGER NOT NULL REFERENCES price_indices (id),
        period TEXT NOT NULL, value TEXT NOT NULL, UNIQUE (index_id, period)""",
    "valuations": """
        id INTEGER PRIMARY KEY, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        amount INTEGER NOT NULL, valuer TEXT NOT NULL, basis TEXT NOT NULL, note TEXT NOT NULL,
        sha256 TEXT REFERENCES originals (sha256)""",
    "comparables": """
        id INTEGER PRIMARY KEY, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        text TEXT NOT NULL, price INTEGER NOT NULL, currency TEXT NOT NULL, kind TEXT NOT NULL,
        source TEXT NOT NULL, note TEXT NOT NULL""",
    "surveys": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL,
        latest TEXT NOT NULL, ceiling INTEGER, ceiling_minutes INTEGER, seed INTEGER NOT NULL,
        note TEXT NOT NULL, closed TEXT""",
    "causes": """
        id INTEGER PRIMARY KEY, survey_id INTEGER NOT NULL REFERENCES surveys (id),
        name TEXT NOT NULL, strength REAL NOT NULL, UNIQUE (survey_id, name)""",
    "findings": """
        id INTEGER PRIMARY KEY, survey_id INTEGER NOT NULL REFERENCES surveys (id),
        panel_id INTEGER REFERENCES panels (id), view_id INTEGER REFERENCES views (id),
        x REAL, y REAL, text TEXT NOT NULL, severity TEXT NOT NULL,
        area_id INTEGER REFERENCES areas (id), cause_id INTEGER REFERENCES causes (id),
        best INTEGER NOT NULL, likely INTEGER NOT NULL, worst INTEGER NOT NULL,
        best_minutes INTEGER NOT NULL, likely_minutes INTEGER NOT NULL,
        worst_minutes INTEGER NOT NULL, note TEXT NOT NULL, rank INTEGER NOT NULL""",
    "wanted": """
        id INTEGER PRIMARY KEY, text TEXT NOT NULL, quantity TEXT NOT NULL,
        panel_id INTEGER REFERENCES panels (id), area_id INTEGER REFERENCES areas (id),
        category TEXT NOT NULL, condition TEXT NOT NULL, price_limit INTEGER, new_price INTEGER,
        note TEXT NOT NULL, line_id INTEGER REFERENCES lines (id)""",
    "sightings": """
        id INTEGER PRIMARY KEY, wanted_id INTEGER NOT NULL REFERENCES wanted (id),
        place TEXT NOT NULL, price INTEGER, currency TEXT NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL, note TEXT NOT NULL""",
    "wanted_changes": """
        id INTEGER PRIMARY KEY, wanted_id INTEGER NOT NULL REFERENCES wanted (id),
        state TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        note TEXT NOT NULL""",
    "imported_rows": """
        id INTEGER PRIMARY KEY, fingerprint TEXT NOT NULL UNIQUE, source TEXT NOT NULL,
        sheet TEXT NOT NULL, row INTEGER NOT NULL,
        receipt_id INTEGER REFERENCES receipts (id), work_id INTEGER REFERENCES work (id)""",
    "pairs": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        before_id INTEGER NOT NULL REFERENCES photos (id),
        after_id INTEGER NOT NULL REFERENCES photos (id), how TEXT NOT NULL,
        matrix TEXT NOT NULL, points TEXT NOT NULL, error_px REAL, inliers INTEGER,
        caption TEXT NOT NULL, rank INTEGER NOT NULL, UNIQUE (area_id, before_id, after_id)""",
    "claim_words": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        claim TEXT NOT NULL, words TEXT NOT NULL, left_out INTEGER NOT NULL,
        UNIQUE (area_id, claim)""",
    "dossier_cuts": """
        id INTEGER PRIMARY KEY, cut TEXT NOT NULL UNIQUE, choices TEXT NOT NULL""",
    "cover_boxes": """
        id INTEGER PRIMARY KEY, photo_id INTEGER NOT NULL REFERENCES photos (id),
        x REAL NOT NULL, y REAL NOT NULL, width REAL NOT NULL, height REAL NOT NULL,
        hides TEXT NOT NULL""",
    "private_words": """
        id INTEGER PRIMARY KEY, words TEXT NOT NULL UNIQUE, kind TEXT NOT NULL""",
    "standard_views": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE,
        photo_id INTEGER NOT NULL REFERENCES photos (id)""",
    "stamps": """
        id INTEGER PRIMARY KEY, sha256 TEXT NOT NULL, what TEXT NOT NULL, requested TEXT NOT NULL,
        request TEXT NOT NULL, reply TEXT NOT NULL, stamped TEXT NOT NULL""",
}

#: Tables whose every change is recorded.
RECORDED = FIRST | SECOND

#: What a change of a table means to those who show it.
KINDS = {
    "originals": "originals",
    "views": "drawing",
    "panels": "drawing",
    "shapes": "drawing",
    "decor": "drawing",
    "seams": "metalwork",
    "seam_changes": "metalwork",
    "patches": "metalwork",
    "measures": "readings",
    "underlays": "drawing",
    "area_panels": "areas",
    "stage_changes": "areas",
    "area_photos": "areas",
    "receipt_papers": "receipts",
    "lines": "receipts",
    "line_shares": "receipts",
    "work_shares": "work",
    "clockings": "work",
    "photo_spans": "work",
    "index_values": "price_indices",
    "causes": "surveys",
    "findings": "surveys",
    "sightings": "wanted",
    "wanted_changes": "wanted",
    "imported_rows": "receipts",
    "comparables": "valuations",
    "claim_words": "claims",
    "dossier_cuts": "dossier",
    "cover_boxes": "covers",
    "private_words": "dossier",
    "standard_views": "dossier",
}
