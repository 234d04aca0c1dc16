"""What is asked for of a block, and the slots and practices that it may be made of."""
