package evenpair.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import tools.jackson.databind.json.JsonMapper;

/**
 * The service worker, which keeps the screens in the browser: its file with two lines before it,
 * the version (a digest over every file of the screens) and the paths of those files. Any change of
 * any file is hence another worker, which the browser takes with all of its files or not at all.
 */
@Controller
class KeptScreens {
  private static final String WORKER = "/service-worker.js";

  private final String script;

  KeptScreens() {
    this("classpath*:static/", "classpath*:META-INF/resources/webjars/");
  }

  /**
   * @param screens where the screens' files are, as a resource pattern that ends with a slash
   * @param webJars where other people's files are, likewise; only what a browser runs is kept
   */
  KeptScreens(String screens, String webJars) {
    Map<String, Resource> files = new TreeMap<>();
    add(files, screens, "**/*", "/static/", "/");
    add(files, webJars, "**/*.js", "/webjars/", "/webjars/");
    add(files, webJars, "**/*.css", "/webjars/", "/webjars/");
    Resource worker = files.remove(WORKER);
    if (worker == null) {
      throw new StartRefused("The screens' service worker is missing.", "Build again.");
    }
    this.script = write(files, worker);
  }

  @AllowedFor(Caller.ANYONE)
  @GetMapping(path = WORKER, produces = "text/javascript")
  ResponseEntity<String> worker() {
    return ResponseEntity.ok()
        .cacheControl(CacheControl.noCache())
        .contentType(new MediaType("text", "javascript", StandardCharsets.UTF_8))
        .body(script);
  }

  String script() {
    return script;
  }

  private static void add(
      Map<String, Resource> files, String root, String pattern, String marker, String prefix) {
    try {
      for (Resource file : new PathMatchingResourcePatternResolver().getResources(root + pattern)) {
        String address = file.getURL().toString();
        boolean forBrowsers = !address.matches(".*[.-](cjs|umd|iife)([.-].*)?\\.js");
        if (file.isReadable() && !address.endsWith("/") && forBrowsers) {
          files.put(
              prefix + address.substring(address.lastIndexOf(marker) + marker.length()), file);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String write(Map<String, Resource> files, Resource worker) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (Map.Entry<String, Resource> file : files.entrySet()) {
        digest.update(file.getKey().getBytes(StandardCharsets.UTF_8));
        read(file.getValue(), digest);
      }
      read(worker, digest);
      String version = HexFormat.of().formatHex(digest.digest(), 0, 8);
      JsonMapper json = JsonMapper.builder().build();
      return "const VERSION = \"%s\"\nconst FILES = %s\n"
              .formatted(version, json.writeValueAsString(files.keySet()))
          + worker.getContentAsString(StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void read(Resource file, MessageDigest into) throws IOException {
    try (InputStream in = new DigestInputStream(file.getInputStream(), into)) {
      in.transferTo(java.io.OutputStream.nullOutputStream());
    }
  }
}
