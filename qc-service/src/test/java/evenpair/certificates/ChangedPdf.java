package evenpair.certificates;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** What a forger does: writes another number into a finished PDF, in its own embedded typeface. */
final class ChangedPdf {
  private final String was;
  private final String becomes;
  private final Map<PDFont, Map<String, byte[]>> glyphs = new HashMap<>();
  private int changes;

  private ChangedPdf(String was, String becomes) {
    this.was = was;
    this.becomes = becomes;
  }

  /**
   * @throws AssertionError if no text of the first page reads so
   */
  static byte[] of(byte[] pdf, String was, String becomes) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      ChangedPdf forger = new ChangedPdf(was, becomes);
      PDPage page = document.getPage(0);
      List<Object> tokens = new PDFStreamParser(page).parse();
      forger.walk(page, tokens, false);
      forger.walk(page, tokens, true);
      if (forger.changes == 0) {
        throw new AssertionError("nothing on the page reads " + was);
      }
      PDStream changed = new PDStream(document);
      try (var out = changed.createOutputStream()) {
        new ContentStreamWriter(out).writeTokens(tokens);
      }
      page.setContents(changed);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    }
  }

  private void walk(PDPage page, List<Object> tokens, boolean change) throws IOException {
    PDFont font = null;
    for (int i = 0; i < tokens.size(); i++) {
      if (!(tokens.get(i) instanceof Operator operator)) {
        continue;
      }
      switch (operator.getName()) {
        case "Tf" -> font = page.getResources().getFont((COSName) tokens.get(i - 2));
        case "Tj" -> {
          if (tokens.get(i - 1) instanceof COSString text) {
            tokens.set(i - 1, seen(font, text, change));
          }
        }
        case "TJ" -> {
          COSArray parts = (COSArray) tokens.get(i - 1);
          for (int part = 0; part < parts.size(); part++) {
            COSBase one = parts.get(part);
            if (one instanceof COSString text) {
              parts.set(part, seen(font, text, change));
            }
          }
        }
        default -> {
          // draws no text
        }
      }
    }
  }

  /** First round: learn which bytes draw which character. Second: write the other number. */
  private COSString seen(PDFont font, COSString text, boolean change) throws IOException {
    byte[] bytes = text.getBytes();
    Map<String, byte[]> known = glyphs.computeIfAbsent(font, f -> new HashMap<>());
    StringBuilder read = new StringBuilder();
    for (int at = 0; at + 1 < bytes.length; at += 2) {
      int code = (bytes[at] & 0xFF) << 8 | bytes[at + 1] & 0xFF;
      String character = font.toUnicode(code);
      known.put(character, Arrays.copyOfRange(bytes, at, at + 2));
      read.append(character);
    }
    if (!change || !read.toString().equals(was)) {
      return text;
    }
    changes++;
    ByteArrayOutputStream forged = new ByteArrayOutputStream();
    becomes.chars().forEach(c -> forged.writeBytes(known.get(Character.toString(c))));
    return new COSString(forged.toByteArray());
  }
}
