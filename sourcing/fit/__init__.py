"""How well a spring meets a need: hard and soft limits in words, a score that can be taken apart, and a chance."""
