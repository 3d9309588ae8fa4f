package evenpair.print;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Takes time and chance out of a PDF, so that one record always prints to the same bytes: the
 * writer puts the moment of printing and a random file identifier into every document, and a random
 * prefix before the name of every embedded font. Each is replaced by one of equal length, so that
 * no offset in the file moves.
 */
final class FixedMarks {
  private static final Pattern DATE =
      Pattern.compile("\\(D:(\\d{14})([+\\-Z])(\\d\\d'\\d\\d')?\\)");
  private static final Pattern FILE_ID =
      Pattern.compile("/ID ?\\[ ?<([0-9a-fA-F]+)> ?<([0-9a-fA-F]+)> ?\\]");
  private static final Pattern FONT_PREFIX = Pattern.compile("/([A-Z]{6})\\+");
  private static final DateTimeFormatter SECONDS =
      DateTimeFormatter.ofPattern("yyyyMMddHHmmss").withZone(ZoneOffset.UTC);

  private FixedMarks() {}

  /**
   * @param dated becomes the document's date, in UTC
   */
  static byte[] of(byte[] pdf, Instant dated) {
    String text = new String(pdf, StandardCharsets.ISO_8859_1);
    text =
        DATE.matcher(text)
            .replaceAll(
                found ->
                    "(D:" + SECONDS.format(dated) + offset(found.group(2), found.group(3)) + ")");
    text = fontPrefixes(text);
    return fileId(text).getBytes(StandardCharsets.ISO_8859_1);
  }

  /**
   * The identifier becomes a digest of everything else, so that different documents still differ in
   * it.
   */
  private static String fileId(String text) {
    String rest = FILE_ID.matcher(text).replaceAll("");
    String digest = digest(rest);
    return FILE_ID
        .matcher(text)
        .replaceAll(
            found ->
                found
                    .group()
                    .replace(found.group(1), sized(digest, found.group(1)))
                    .replace(found.group(2), sized(digest, found.group(2))));
  }

  private static String sized(String digest, String like) {
    return digest.repeat(like.length() / digest.length() + 1).substring(0, like.length());
  }

  private static String digest(String text) {
    try {
      byte[] bytes =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.ISO_8859_1));
      return HexFormat.of().formatHex(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private static String offset(String sign, String rest) {
    return rest == null ? "Z" : (sign.equals("Z") ? "Z" : "+") + "00'00'";
  }

  /**
   * The first prefix met becomes AAAAAA, the next AAAAAB, and so on; one prefix stands in several
   * places.
   */
  private static String fontPrefixes(String text) {
    Map<String, String> fixed = new LinkedHashMap<>();
    Matcher matcher = FONT_PREFIX.matcher(text);
    StringBuilder result = new StringBuilder(text.length());
    while (matcher.find()) {
      String replacement =
          fixed.computeIfAbsent(matcher.group(1), prefix -> "AAAAA" + (char) ('A' + fixed.size()));
      matcher.appendReplacement(result, "/" + replacement + "+");
    }
    return matcher.appendTail(result).toString();
  }
}
