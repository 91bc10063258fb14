"""Rate, equivalent time, contrast and time."""
