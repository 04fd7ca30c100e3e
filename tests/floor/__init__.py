"""What a person does, on fakes of the store, the clock and the listeners."""
