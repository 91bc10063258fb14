"""What each page shows of the house: frozen values in words and figures, ready for its template."""
