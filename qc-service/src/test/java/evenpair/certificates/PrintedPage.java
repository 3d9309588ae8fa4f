package evenpair.certificates;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** What an independent reader of PDF finds in a printed document. */
record PrintedPage(
    int pages,
    float width,
    float height,
    String text,
    List<Font> fonts,
    int rasterImages,
    List<String> textOutsideMargins,
    Instant dated) {
  /**
   * The narrowest margin of any paper size here is 32 pt; descenders may reach a little below their
   * line.
   */
  private static final float MARGIN = 30;

  record Font(String name, boolean embedded) {}

  static PrintedPage of(String name, byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      Path folder = Files.createDirectories(Path.of("target", "paper"));
      Files.write(folder.resolve(name + ".pdf"), pdf);
      Everything found = new Everything();
      found.resources(document.getPage(0).getResources());
      Outside outside = new Outside();
      outside.getText(document);
      PDFTextStripper lines = new PDFTextStripper();
      lines.setSortByPosition(true);
      return new PrintedPage(
          document.getNumberOfPages(),
          document.getPage(0).getMediaBox().getWidth(),
          document.getPage(0).getMediaBox().getHeight(),
          lines.getText(document),
          found.fonts,
          found.images,
          outside.found,
          document.getDocumentInformation().getCreationDate().toInstant());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  List<String> lines() {
    return Arrays.stream(text.split("\\R"))
        .map(line -> line.trim().replaceAll("\\s+", " "))
        .toList();
  }

  /**
   * @return the text without any white space: a wrapped name reads as one word
   */
  String joined() {
    return text.replaceAll("\\s+", "");
  }

  /** Fonts and pictures of the page and of every drawing inside it. */
  private static final class Everything {
    private final List<Font> fonts = new ArrayList<>();
    private int images;

    void resources(PDResources resources) throws IOException {
      for (COSName name : resources.getFontNames()) {
        PDFont font = resources.getFont(name);
        fonts.add(new Font(font.getName(), font.isEmbedded()));
      }
      for (COSName name : resources.getXObjectNames()) {
        if (resources.getXObject(name) instanceof PDImageXObject) {
          images++;
        } else if (resources.getXObject(name) instanceof PDFormXObject form
            && form.getResources() != null) {
          resources(form.getResources());
        }
      }
    }
  }

  private static final class Outside extends PDFTextStripper {
    private final List<String> found = new ArrayList<>();

    @Override
    protected void processTextPosition(TextPosition at) {
      boolean inside =
          at.getX() >= MARGIN
              && at.getX() + at.getWidth() <= at.getPageWidth() - MARGIN
              && at.getY() >= MARGIN
              && at.getY() <= at.getPageHeight() - MARGIN;
      if (!inside && !at.getUnicode().isBlank()) {
        found.add(at.getUnicode() + " at " + at.getX() + ", " + at.getY());
      }
      super.processTextPosition(at);
    }
  }
}
