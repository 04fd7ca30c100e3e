"""Values published by others: standards, handbooks, exact arithmetic."""
