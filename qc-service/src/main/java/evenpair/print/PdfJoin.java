package evenpair.print;

import com.lowagie.text.Document;
import com.lowagie.text.pdf.PdfCopy;
import com.lowagie.text.pdf.PdfReader;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Iterator;

/** Puts finished PDF documents one behind the other, holding one of them in memory at a time. */
public final class PdfJoin {
  private PdfJoin() {}

  /**
   * @param documents one or more
   * @param out is flushed, not closed
   * @throws IllegalArgumentException if there is no document
   */
  public static void join(Iterator<byte[]> documents, OutputStream out) throws IOException {
    if (!documents.hasNext()) {
      throw new IllegalArgumentException("nothing to join");
    }
    Document joined = new Document();
    PdfCopy copy = new PdfCopy(joined, new NotClosed(out));
    joined.open();
    while (documents.hasNext()) {
      PdfReader reader = new PdfReader(documents.next());
      for (int page = 1; page <= reader.getNumberOfPages(); page++) {
        copy.addPage(copy.getImportedPage(reader, page));
      }
      copy.freeReader(reader);
      reader.close();
    }
    joined.close();
    out.flush();
  }

  private static final class NotClosed extends FilterOutputStream {
    NotClosed(OutputStream out) {
      super(out);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      out.write(bytes, from, length);
    }

    @Override
    public void close() throws IOException {
      out.flush();
    }
  }
}
