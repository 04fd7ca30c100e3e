"""The store on a real file. Contracts that a fake must keep too are base classes here."""
