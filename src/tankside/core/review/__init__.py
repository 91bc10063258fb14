"""What was planned beside what happened, and what it proposes."""
