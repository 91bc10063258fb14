"""Opens and joins the adapters; the only file that names every one of them."""
