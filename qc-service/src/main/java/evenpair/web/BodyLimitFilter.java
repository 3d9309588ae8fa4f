package evenpair.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * A body that is no upload is JSON or YAML written by hand or by a rig: {@value #MOST} bytes are
 * plenty. Uploads have limits of their own.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 200)
class BodyLimitFilter extends OncePerRequestFilter {
  static final long MOST = 4L << 20;

  private final ProblemDocuments documents;

  BodyLimitFilter(ProblemDocuments documents) {
    this.documents = documents;
  }

  static Refusal refusal() {
    return new Refusal(
            413, "body-too-large", "The body of this request may have " + MOST + " bytes at most.")
        .with("expected", "at most " + MOST + " bytes");
  }

  @Override
  protected boolean shouldNotFilter(HttpServletRequest request) {
    String type = request.getContentType();
    return type != null && type.regionMatches(true, 0, "multipart/", 0, "multipart/".length());
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    if (request.getContentLengthLong() > MOST) {
      documents.write(refusal(), request.getLocale(), response);
    } else {
      chain.doFilter(new Counted(request), response);
    }
  }

  /** A body of unstated length is counted while it is read. */
  private static final class Counted extends HttpServletRequestWrapper {
    private Counted(HttpServletRequest request) {
      super(request);
    }

    @Override
    public ServletInputStream getInputStream() throws IOException {
      return new CountedStream(super.getInputStream());
    }
  }

  private static final class CountedStream extends ServletInputStream {
    private final ServletInputStream body;
    private long read;

    private CountedStream(ServletInputStream body) {
      this.body = body;
    }

    private int count(int bytes) {
      read += Math.max(0, bytes);
      if (read > MOST) {
        throw refusal();
      }
      return bytes;
    }

    @Override
    public int read() throws IOException {
      int next = body.read();
      count(next < 0 ? 0 : 1);
      return next;
    }

    @Override
    public int read(byte[] target, int from, int length) throws IOException {
      return count(body.read(target, from, length));
    }

    @Override
    public boolean isFinished() {
      return body.isFinished();
    }

    @Override
    public boolean isReady() {
      return body.isReady();
    }

    @Override
    public void setReadListener(ReadListener listener) {
      body.setReadListener(listener);
    }
  }
}
