"""What is set beforehand: positions, orders, nights, bedtimes, candies. Pure: no I/O, no clock, no text."""
