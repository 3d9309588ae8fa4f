package evenpair.ledger;

/** A row of {@code ledger_block}. */
record Block(BlockHead head, byte[] signature, byte[] digest) {}
