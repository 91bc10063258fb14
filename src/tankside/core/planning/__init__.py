"""Where the sciences meet: tankfuls, liquids, tempering, order, why."""
