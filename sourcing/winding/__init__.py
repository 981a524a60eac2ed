"""Winding one by hand: springback, the mandrel, the plan and the steps at the bench."""
