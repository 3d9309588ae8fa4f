package evenpair.web;

import jakarta.servlet.MultipartConfigElement;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * Limits of an upload. The container counts while it reads, so that a larger file is refused before
 * it is read whole.
 */
@Configuration(proxyBeanMethods = false)
class UploadSetup {
  /** A swap study carries four files a seating; further parts are small JSON. */
  private static final int FILES = 24;

  private static final long JSON_BYTES = 1 << 20;

  /** Smaller parts stay in memory; larger ones are kept in a file until the request ends. */
  private static final int IN_MEMORY_BYTES = 1 << 18;

  @Bean
  MultipartConfigElement multipartConfigElement(
      @Value("${evenpair.capture-max-bytes}") long captureMaxBytes) {
    if (captureMaxBytes < 1024 || captureMaxBytes > Integer.MAX_VALUE) {
      throw new StartRefused(
          "evenpair.capture-max-bytes is " + captureMaxBytes + ".",
          "Set it to 1024 to 2147483647 bytes; the default is 33554432.");
    }
    return new MultipartConfigElement(
        "", captureMaxBytes, largestRequest(captureMaxBytes), IN_MEMORY_BYTES);
  }

  static long largestRequest(long captureMaxBytes) {
    return FILES * captureMaxBytes + JSON_BYTES;
  }
}
