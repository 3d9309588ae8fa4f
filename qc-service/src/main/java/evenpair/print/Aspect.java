package evenpair.print;

/**
 * Proportions of a level plot over log frequency: how many dB are as long as one decade (IEC 60263,
 * from memory).
 */
enum Aspect {
  DECADE_25_DB(25),
  DECADE_50_DB(50);

  private final double dbPerDecade;

  Aspect(double dbPerDecade) {
    this.dbPerDecade = dbPerDecade;
  }

  double dbPerDecade() {
    return dbPerDecade;
  }
}
