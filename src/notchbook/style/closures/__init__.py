"""What closes a garment and holds it at the waist: stands, flies, bands, casings, straps and strips."""
