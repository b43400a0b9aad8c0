"""The table of budgets: what each part costs beside a bare reference, measured in one run."""
