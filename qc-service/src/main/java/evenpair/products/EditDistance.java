package evenpair.products;

/**
 * How many characters must be put in, taken out or replaced to make one word the other
 * (Levenshtein).
 */
final class EditDistance {
  /** Longer words are never near a key; the bound keeps hostile ones cheap. */
  private static final int LONGEST = 64;

  private EditDistance() {}

  static int between(String known, String word) {
    if (word.length() > LONGEST) {
      return word.length();
    }
    int[] row = new int[word.length() + 1];
    for (int j = 0; j < row.length; j++) {
      row[j] = j;
    }
    for (int i = 1; i <= known.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j < row.length; j++) {
        int replaced = diagonal + (known.charAt(i - 1) == word.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(replaced, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[row.length - 1];
  }
}
