package evenpair.certificates;

/** No block of the ledger holds the record yet. */
class NotYetSealed extends RuntimeException {
  private static final long serialVersionUID = 1;
}
