package violations.modules.lower;

import violations.modules.upper.Record;

/** Knows a record and must not. */
public class Judge {
  private final Record record;

  public Judge(Record record) {
    this.record = record;
  }

  public Record record() {
    return record;
  }
}
