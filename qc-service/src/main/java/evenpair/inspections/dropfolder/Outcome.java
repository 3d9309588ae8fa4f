package evenpair.inspections.dropfolder;

import java.util.Map;

/**
 * What a set came to.
 *
 * @param folder {@code done} or {@code refused}
 * @param reports texts to lie beside the files, by file name
 */
record Outcome(String folder, Map<String, String> reports) {
  static final String DONE = "done";
  static final String REFUSED = "refused";
}
