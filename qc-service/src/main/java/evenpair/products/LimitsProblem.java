package evenpair.products;

/**
 * One thing wrong in a file of limits.
 *
 * @param file as the reader was told, such as {@code limits/sedge-2/plain.yaml}
 * @param line 1 upwards
 * @param column 1 upwards
 * @param path place in the document, such as {@code regions[2].match-db}; empty for the document as
 *     a whole
 * @param found what stands there
 * @param expected what would be right
 */
record LimitsProblem(
    String file, int line, int column, String path, String found, String expected) {
  @Override
  public String toString() {
    String place = path.isEmpty() ? "" : ", " + path;
    return "%s line %d, column %d%s: found %s, expected %s"
        .formatted(file, line, column, place, found, expected);
  }
}
