"""The web face: pages, forms, templates."""
