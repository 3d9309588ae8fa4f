package evenpair.pairing;

import java.util.Map;

/**
 * An earpiece of the pool that may not be paired; stored as a word and numbers, its sentence made
 * for each reader.
 *
 * @param why a word that a text {@code pairing.left-out.<why>} exists for
 * @param values for the text's placeholders
 */
record LeftOut(
    String serial, String channel, String earpiece, String why, Map<String, Object> values) {}
