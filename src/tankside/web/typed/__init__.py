"""What was typed on a page, read as amounts, rolls and wishes; refusals stand at their own fields."""
